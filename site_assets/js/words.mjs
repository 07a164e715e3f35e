/** Puts a page's own words together: fills placeholders, shows lengths in the reader's units. */

/** @import {Facts, PageWords} from "./types.mjs" */

import { NUMBER_MARKS } from "./languages.mjs";

/** Between a number and its unit, so that no line ends there. */
const NO_BREAK = "\u00a0";
const PLACEHOLDER = /\{([a-z][a-z0-9_]*)\}/gi;

export class Words {
  /** @param {Pick<PageWords, "language" | "units" | "strings">} page */
  constructor(page) {
    this.language = page.language;
    this.units = page.units;
    this.strings = page.strings;
  }

  /**
   * The text for a key, filled in. A text that is missing shows its key, so that it is seen.
   *
   * @param {string} key  without the leading `exercise.`
   * @param {Facts} [facts]
   */
  say(key, facts = {}) {
    const template = this.strings[`exercise.${key}`];
    return template === undefined ? `exercise.${key}` : this.fill(template, facts);
  }

  /** @param {string} key  without the leading `exercise.` */
  knows(key) {
    return `exercise.${key}` in this.strings;
  }

  /**
   * The text for a number of things: `key.one` or `key.many`, with `{n}` filled in.
   *
   * @param {string} key
   * @param {number} n
   * @param {Facts} [facts]
   */
  count(key, n, facts = {}) {
    return this.say(`${key}.${n === 1 ? "one" : "many"}`, { n, ...facts });
  }

  /**
   * Fills `{gap}` and `{gap_mm}` alike from a fact `gap_mm`, as a length in the reader's units.
   *
   * @param {string} template
   * @param {Facts} facts
   */
  fill(template, facts) {
    return template.replace(PLACEHOLDER, (whole, name) => {
      const bare = name.replace(/_mm$/, "");
      const mm = facts[`${bare}_mm`];
      if (typeof mm === "number") return this.length(mm);
      return name in facts ? String(facts[name]) : whole;
    });
  }

  /**
   * The short name of some wood in the reader's language: `L1m above a` is a name of the sheet.
   *
   * @param {string} name
   */
  wood(name) {
    const [part, piece] = name.split(" above ");
    return piece === undefined ? name : this.say("wood-above", { part, piece });
  }

  /**
   * A length rounded to what a tape can tell, as on the handbook's other pages.
   *
   * @param {number} mm
   */
  length(mm) {
    if (this.units === "us") return usLength(mm);
    if (Math.abs(mm) < 20) return `${mm}${NO_BREAK}mm`;
    if (Math.abs(mm) < 10_000) return `${this.tenths(mm)}${NO_BREAK}cm`;
    return `${this.tenths(roundHalfUp(mm, 100))}${NO_BREAK}m`;
  }

  /**
   * A number given in tenths, with no decimal that says nothing.
   *
   * @param {number} tenths
   */
  tenths(tenths) {
    const whole = Math.trunc(tenths / 10);
    const rest = Math.abs(tenths % 10);
    const sign = tenths < 0 && whole === 0 ? "-" : "";
    return rest === 0 ? `${whole}` : `${sign}${whole}${NUMBER_MARKS[this.language]?.decimal ?? "."}${rest}`;
  }
}

/**
 * @param {number} top
 * @param {number} bottom
 */
function roundHalfUp(top, bottom) {
  return Math.floor((2 * top + bottom) / (2 * bottom));
}

/** @param {number} mm */
function usLength(mm) {
  const size = Math.abs(mm);
  const sign = mm < 0 ? "-" : "";
  if (size * 10 < 2 * 254) return `${sign}${mixed(size * 10, 254, 16)}${NO_BREAK}in`;
  if (size * 10 < 36 * 254) return `${sign}${mixed(size * 10, 254, 2)}${NO_BREAK}in`;
  return `${sign}${mixed(size * 10, 3048, 4)}${NO_BREAK}ft`;
}

/**
 * @param {number} top
 * @param {number} bottom
 * @param {number} parts  4 rounds to quarters
 */
function mixed(top, bottom, parts) {
  let rest = roundHalfUp(top * parts, bottom);
  const whole = Math.floor(rest / parts);
  rest %= parts;
  if (rest === 0) return `${whole}`;
  let under = parts;
  while (rest % 2 === 0) [rest, under] = [rest / 2, under / 2];
  return whole === 0 ? `${rest}/${under}` : `${whole} ${rest}/${under}`;
}
