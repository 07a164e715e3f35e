/** Where the learner stands along the vine, and the way to the other positions. */

import { arrow, element, setText } from "./dom.mjs";

/** @import {Headings} from "./headings.mjs" */
/** @import {Sheet} from "./types.mjs" */

export class PositionNav {
  /**
   * @param {Sheet} sheet
   * @param {import("./words.mjs").Words} words
   * @param {Headings} headings
   * @param {{go: (by: 1 | -1) => void, select: (position: number) => void}} actions
   */
  constructor(sheet, words, headings, actions) {
    this.sheet = sheet;
    this.words = words;
    const more = words.say("position.choose");
    this.heading = element(headings.main, { class: "pw-position-title pw-unseen" });
    this.previous = arrow("back", words.say("position.previous"), () => actions.go(-1));
    this.next = arrow("on", words.say("position.next"), () => actions.go(1));
    this.select = element(
      "select",
      {},
      ...sheet.positions.map(({ name }, number) => element("option", { value: number }, name)),
    );
    this.select.addEventListener("change", () => actions.select(Number(this.select.value)));
    const label = element("label", {}, element("span", { class: "pw-unseen" }, more), this.select);
    this.root = element("div", { class: "pw-nav" }, this.heading, this.previous, label, this.next);
  }

  /** @param {number} position */
  update(position) {
    const { positions } = this.sheet;
    const facts = { name: positions[position].name, n: position + 1, of: positions.length };
    setText(this.heading, this.words.say("position.title", facts));
    this.select.value = `${position}`;
    this.previous.disabled = position === 0;
    this.next.disabled = position === positions.length - 1;
  }
}
