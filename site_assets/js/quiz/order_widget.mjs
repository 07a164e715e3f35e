/** Steps to put in order: two buttons for each, nothing to drag. */

import { button, element, setText } from "../dom.mjs";

/** @import {Answer, OrderQuestion} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

export class OrderWidget {
  /**
   * @param {OrderQuestion} question
   * @param {QuizWords} words
   * @param {(answer: Answer) => void} changed
   */
  constructor(question, words, changed) {
    this.question = question;
    this.words = words;
    this.changed = changed;
    this.order = question.items.map((_, number) => number);
    this.rows = question.items.map(({ text }, number) => this.makeRow(text, number));
    this.list = element("ol", { class: "pw-ask-order" });
    this.said = element("p", { class: "pw-ask-said", role: "status" });
    const hint = element("p", { class: "pw-ask-hint" }, words.say("order.hint"));
    this.root = element("div", {}, hint, this.list, this.said);
  }

  /**
   * @param {string} text
   * @param {number} number
   */
  makeRow(text, number) {
    const { words } = this;
    const up = button(words.say("order.up"), () => this.move(number, -1), { more: text });
    const down = button(words.say("order.down"), () => this.move(number, 1), { more: text });
    const place = element("span", { class: "pw-ask-place", "aria-hidden": "true" });
    const buttons = element("div", { class: "pw-buttons" }, up, down);
    const row = element("li", {}, place, element("span", { class: "pw-ask-step" }, text), buttons);
    return { row, place, up, down };
  }

  /**
   * @param {number} item
   * @param {1 | -1} by
   */
  move(item, by) {
    const from = this.order.indexOf(item);
    const to = from + by;
    if (this.locked || to < 0 || to >= this.order.length) return;
    const order = [...this.order];
    [order[from], order[to]] = [order[to], order[from]];
    this.changed(order);
    // Moving a row in the page takes the focus off its button.
    this.rows[item][by < 0 ? "up" : "down"].focus();
    const { text } = this.question.items[item];
    setText(this.said, this.words.say("order.moved", { text, n: to + 1, of: order.length }));
  }

  /**
   * @param {Answer | undefined} answer
   * @param {boolean} locked
   */
  show(answer, locked) {
    this.locked = locked;
    if (Array.isArray(answer)) this.order = answer;
    const rows = this.order.map((item) => this.rows[item]);
    rows.forEach(({ row, place, up, down }, at) => {
      setText(place, `${at + 1}`);
      // A button that is off keeps the focus, so that nobody falls off the list.
      up.setAttribute("aria-disabled", `${at === 0}`);
      down.setAttribute("aria-disabled", `${at === rows.length - 1}`);
      up.hidden = locked;
      down.hidden = locked;
      if (this.list.children[at] !== row) this.list.insertBefore(row, this.list.children[at] ?? null);
    });
  }

  destroy() {}
}
