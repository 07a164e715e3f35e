/**
 * Adds up a quiz: a table row for each vine, filled from what its exercise tells, and whether
 * enough vines are passed. It holds no rule and no score of its own.
 */

import { Keeper } from "./storage.mjs";
import { versionOf } from "./saved_work.mjs";

/**
 * @typedef {object} Told  what an exercise tells when it is scored
 * @property {string} case
 * @property {string} version
 * @property {number} score
 * @property {number} cutting
 * @property {boolean} passed
 *
 * @typedef {object} QuizWords
 * @property {number} passesNeeded
 * @property {Record<string, string>} strings
 */

export class Quiz {
  /**
   * @param {HTMLElement} root  `[data-pencilwood-quiz]` that holds exercises and the table
   * @param {Keeper} [keeper]
   */
  constructor(root, keeper = new Keeper()) {
    this.root = root;
    this.keeper = keeper;
    const words = root.querySelector("script.pw-quiz-words")?.textContent ?? "null";
    this.words = /** @type {QuizWords} */ (JSON.parse(words));
    /** @type {Map<string, Told>} */
    this.told = new Map();
    this.hear = this.hear.bind(this);
  }

  bind() {
    for (const exercise of this.root.querySelectorAll("[data-pencilwood-exercise]")) {
      const sheet = JSON.parse(exercise.querySelector("script.pw-sheet")?.textContent ?? "null");
      const kept = /** @type {Told | null} */ (this.keeper.read(`score:${sheet.case}`));
      // A score for an older measuring of the vine says nothing about this one.
      if (kept?.version === versionOf(sheet)) this.told.set(sheet.case, kept);
    }
    this.root.addEventListener("pencilwood:scored", this.hear);
    this.update();
  }

  destroy() {
    this.root.removeEventListener("pencilwood:scored", this.hear);
  }

  /** @param {Event} event */
  hear(event) {
    const told = /** @type {CustomEvent<Told>} */ (event).detail;
    this.told.set(told.case, told);
    this.update();
  }

  update() {
    const { strings, passesNeeded } = this.words;
    const rows = [...this.root.querySelectorAll("tr[data-case]")];
    for (const row of rows) {
      const told = this.told.get(row.getAttribute("data-case") ?? "");
      if (told === undefined) continue;
      write(row, ".pw-quiz-score", `${told.score}`);
      write(row, ".pw-quiz-cutting", `${told.cutting}`);
      write(row, ".pw-quiz-verdict", told.passed ? strings.passed : strings.failed);
      row.classList.toggle("pw-quiz-passed", told.passed);
    }
    const passed = [...this.told.values()].filter((told) => told.passed).length;
    const verdict = passed >= passesNeeded ? "verdict.passed" : "verdict.open";
    const text = strings[verdict]
      .replace("{n}", `${passed}`)
      .replace("{of}", `${rows.length}`)
      .replace("{needed}", `${passesNeeded}`);
    write(this.root, ".pw-quiz-total", text);
  }
}

/**
 * @param {Element} root
 * @param {string} selector
 * @param {string} text
 */
function write(root, selector, text) {
  const place = root.querySelector(selector);
  if (place !== null && place.textContent !== text) place.textContent = text;
}
