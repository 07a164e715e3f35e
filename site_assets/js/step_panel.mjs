/** Says which pass the learner is in and what to do in it, and moves to the next one. */

import { button, element, setText } from "./dom.mjs";
/** @import {PassName} from "./types.mjs" */

export class StepPanel {
  /**
   * @param {import("./words.mjs").Words} words
   * @param {readonly PassName[]} passes  of the vine's form
   * @param {number} roughBuds  buds that a rough cut leaves
   * @param {{changePass: (by: 1 | -1) => void, shortenAll: () => void, finish: () => void}} actions
   */
  constructor(words, passes, roughBuds, actions) {
    this.words = words;
    this.passes = passes;
    this.heading = element("h3", { class: "pw-step-title", tabindex: -1 });
    this.todo = element("p", { class: "pw-step-todo" });
    this.warning = element("p", { class: "pw-warning" }, words.say("out-of-order"));
    this.shorten = button(words.count("shorten-all", roughBuds), actions.shortenAll);
    this.back = button(words.say("pass.back"), () => actions.changePass(-1));
    this.onward = new Onward(words, passes, actions);
    this.footer = new Onward(words, passes, actions);
    this.root = element(
      "div",
      { class: "pw-step" },
      this.heading,
      this.todo,
      this.warning,
      element("div", { class: "pw-buttons" }, this.shorten, this.onward.root, this.back),
    );
  }

  /**
   * @param {import("./types.mjs").PassName} pass
   * @param {boolean} outOfOrder  whether a cut made now comes too late
   */
  update(pass, outOfOrder) {
    const number = this.passes.indexOf(pass);
    const name = this.words.say(`pass.${pass}`);
    const of = { n: number + 1, of: this.passes.length, pass: name };
    setText(this.heading, this.words.say("pass.heading", of));
    setText(this.todo, this.words.say(`pass.${pass}.todo`));
    this.warning.hidden = !outOfOrder;
    this.shorten.hidden = pass !== "rough";
    this.back.hidden = number === 0;
    this.onward.update(number);
    this.footer.update(number);
  }
}

/** The way on, to the next pass or to the result; it stands above and below the vine. */
class Onward {
  /**
   * @param {import("./words.mjs").Words} words
   * @param {readonly PassName[]} passes
   * @param {{changePass: (by: 1 | -1) => void, finish: () => void}} actions
   */
  constructor(words, passes, actions) {
    this.words = words;
    this.passes = passes;
    this.next = button("", () => actions.changePass(1), { class: "pw-main" });
    this.done = button(words.say("done"), actions.finish, { class: "pw-main" });
    this.root = element("div", { class: "pw-way-on" }, this.next, this.done);
  }

  /** @param {number} pass  number of the pass, from 0 */
  update(pass) {
    this.next.hidden = pass === this.passes.length - 1;
    this.done.hidden = !this.next.hidden;
    if (this.next.hidden) return;
    const name = this.words.say(`pass.${this.passes[pass + 1]}`);
    setText(this.next, this.words.say("pass.next", { pass: name }));
  }
}
