/** Undo, which stands by itself near the thumb; redo, look back and start again. */

import { button, element } from "./dom.mjs";

export class HistoryPanel {
  /**
   * @param {import("./words.mjs").Words} words
   * @param {{undo: () => void, redo: () => void, lookBack: () => void, startAgain: () => void}} actions
   */
  constructor(words, actions) {
    this.undo = button(words.say("undo"), actions.undo, { class: "pw-undo" });
    this.redo = button(words.say("redo"), actions.redo);
    this.lookBack = button(words.say("look-back"), actions.lookBack);
    this.again = button(words.say("again"), () => {
      if (this.again.getAttribute("aria-disabled") === "false") this.askAgain(true);
    });
    const yes = () => {
      this.askAgain(false);
      actions.startAgain();
    };
    this.yes = button(words.say("again.yes"), yes);
    this.no = button(words.say("again.no"), () => this.askAgain(false));
    this.question = element(
      "div",
      { class: "pw-question", role: "group", "aria-label": words.say("again.question"), hidden: true },
      element("p", {}, words.say("again.question")),
      element("div", { class: "pw-buttons" }, this.yes, this.no),
    );
    this.root = element(
      "div",
      { class: "pw-history" },
      element("div", { class: "pw-buttons" }, this.redo, this.lookBack, this.again),
      this.question,
    );
  }

  /** @param {boolean} asking */
  askAgain(asking) {
    this.question.hidden = !asking;
    (asking ? this.no : this.again).focus();
  }

  /**
   * @param {import("./wood.mjs").History} history
   * @param {boolean} lookBack
   */
  update(history, lookBack) {
    setAvailable(this.undo, history.done > 0);
    setAvailable(this.redo, history.done < history.steps.length);
    setAvailable(this.again, history.done > 0);
    this.lookBack.setAttribute("aria-pressed", `${lookBack}`);
  }
}

/**
 * A button that cannot be used keeps its place for the keyboard.
 *
 * @param {HTMLButtonElement} target
 * @param {boolean} available
 */
function setAvailable(target, available) {
  target.setAttribute("aria-disabled", `${!available}`);
}
