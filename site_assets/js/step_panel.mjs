/** Says which pass the learner is in and what to do in it, and moves to the next one. */

import { button, element, setText } from "./dom.mjs";
/** @import {Headings} from "./headings.mjs" */
/** @import {PassName} from "./types.mjs" */

export class StepPanel {
  /**
   * @param {import("./words.mjs").Words} words
   * @param {Headings} headings
   * @param {readonly PassName[]} passes  of the vine's form
   * @param {number} roughBuds  buds that a rough cut leaves
   * @param {{changePass: (by: 1 | -1) => void, shortenAll: () => void, finish: () => void}} actions
   */
  constructor(words, headings, passes, roughBuds, actions) {
    this.words = words;
    this.passes = passes;
    this.heading = element(headings.main, { class: "pw-step-title pw-unseen", tabindex: -1 });
    this.todo = element("p", { class: "pw-step-todo" });
    this.warning = element("p", { class: "pw-warning" }, words.say("out-of-order"));
    this.knots = passes.map((pass) => element("li", {}, words.say(`pass.${pass}`)));
    this.next = button("", () => actions.changePass(1), { class: "pw-main" });
    this.done = button(words.say("done"), actions.finish, { class: "pw-main" });
    this.root = element(
      "div",
      { class: "pw-step" },
      this.heading,
      element("ol", { class: "pw-wire" }, ...this.knots),
      element("div", { class: "pw-step-now" }, this.todo, this.next, this.done),
      this.warning,
    );
    this.shorten = button(words.count("shorten-all", roughBuds), actions.shortenAll);
    this.back = button(words.say("pass.back"), () => actions.changePass(-1));
    /** What can be done in a pass as a whole; it stands near the thumb. */
    this.tools = element("div", { class: "pw-buttons pw-pass-tools" }, this.shorten, this.back);
  }

  /**
   * @param {PassName} pass
   * @param {boolean} outOfOrder  whether a cut made now comes too late
   */
  update(pass, outOfOrder) {
    const { words, passes } = this;
    const number = passes.indexOf(pass);
    const of = { n: number + 1, of: passes.length, pass: words.say(`pass.${pass}`) };
    setText(this.heading, words.say("pass.heading", of));
    setText(this.todo, words.say(`pass.${pass}.todo`));
    this.knots.forEach((knot, at) => {
      knot.classList.toggle("pw-wire-past", at < number);
      if (at === number) knot.setAttribute("aria-current", "step");
      else knot.removeAttribute("aria-current");
    });
    this.warning.hidden = !outOfOrder;
    this.shorten.hidden = pass !== "rough";
    this.back.hidden = number === 0;
    const last = number === passes.length - 1;
    this.next.hidden = last;
    this.done.hidden = !last;
    if (!last) setText(this.next, words.say("pass.next", { pass: words.say(`pass.${passes[number + 1]}`) }));
  }
}
