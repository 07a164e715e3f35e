/** How the learner cuts: with which tool, and how far above the bud. Nothing is preset. */

import { check, element, radios } from "./dom.mjs";

/** @import {StubName, ToolName} from "./types.mjs" */

/** @typedef {{tool: ToolName | null, stub: StubName | null}} How */

/** @type {readonly ToolName[]} */
export const TOOLS = ["shears", "loppers", "saw"];
/** @type {readonly StubName[]} */
export const STUBS = ["close", "right", "long"];

export class HowPanel {
  /**
   * @param {import("./words.mjs").Words} words
   * @param {string} id  unique on the page
   * @param {(how: Partial<How>) => void} choose
   */
  constructor(words, id, choose) {
    const options = (/** @type {string} */ group, /** @type {readonly string[]} */ values) =>
      values.map((value) => ({ value, text: words.say(`${group}.${value}`) }));
    this.tool = radios(words.say("tool"), `${id}-tool`, options("tool", TOOLS), (value) =>
      choose({ tool: /** @type {ToolName} */ (value) }),
    );
    this.stub = radios(words.say("stub"), `${id}-stub`, options("stub", STUBS), (value) =>
      choose({ stub: /** @type {StubName} */ (value) }),
    );
    this.hint = element("p", { class: "pw-warning", role: "alert" });
    this.hintText = words.say("choose-first");
    this.root = element("div", { class: "pw-how" }, this.hint, this.tool, this.stub);
  }

  /** @param {How} how */
  update(how) {
    check(this.tool, how.tool);
    check(this.stub, how.stub);
    const complete = how.tool !== null && how.stub !== null;
    if (complete) this.hint.textContent = "";
    this.root.classList.toggle("pw-incomplete", !complete);
  }

  /**
   * Says that both must be chosen before the first cut, and goes there.
   *
   * @param {How} how
   */
  ask(how) {
    this.hint.textContent = this.hintText;
    const group = how.tool === null ? this.tool : this.stub;
    group.querySelector("input")?.focus();
  }
}
