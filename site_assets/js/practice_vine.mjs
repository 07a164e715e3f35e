/** A practice vine out of its script: the sheet, the page's words and the drawing of one exercise. */

import { unpackSheet } from "./compact_sheet.mjs";
import { drawVine, LEANS } from "./practice_drawing.mjs";
import { CONDITIONS } from "./practice_wood.mjs";
import { Words } from "./words.mjs";

/** @import {PackedSheet} from "./compact_sheet.mjs" */
/** @import {PackedVine} from "./practice_drawing.mjs" */
/** @import {Facts, PageWords, PassName, RuleWords, Sheet, SheetPiece, ShownCut} from "./types.mjs" */

/**
 * @typedef {object} PackedPractice
 * @property {number} format
 * @property {string} name
 * @property {string} level
 * @property {string[]} teaches
 * @property {PackedSheet} sheet
 * @property {PackedVine} vine
 * @property {{states: number[], cuts: [piece: number, buds: number | null, pass: number,
 *   message: number, facts: Facts][]}} plan  message -1: the cut has no reason of its own
 *
 * @typedef {object} PracticeWords
 * @property {string} language
 * @property {"metric" | "us"} units
 * @property {Record<string, string>} strings
 * @property {Record<string, RuleWords>} rules
 */

/** @type {readonly PassName[]} */
const PASSES = ["rough", "thinning-out", "fine"];

/**
 * @param {PackedPractice} packed
 * @param {PracticeWords} given
 * @returns {{sheet: Sheet, page: PageWords, svg: SVGSVGElement}}
 */
export function unpack(packed, given) {
  const sheet = unpackSheet(packed.sheet);
  const { language, units, strings, rules } = given;
  const words = new WoodWords(given);
  const label = strings["practice.drawing"];
  return {
    sheet,
    page: {
      language,
      units,
      strings,
      rules,
      pieces: words.pieces(packed, sheet),
      answer: null,
      plan: { states: packed.plan.states, cuts: planned(packed, sheet, words, rules) },
    },
    svg: drawVine(packed.vine, sheet, { language, label }),
  };
}

/**
 * @param {PackedPractice} packed
 * @param {Sheet} sheet
 * @param {WoodWords} words
 * @param {Record<string, RuleWords>} rules
 * @returns {ShownCut[]}
 */
function planned(packed, sheet, words, rules) {
  return packed.plan.cuts.map(([piece, buds, pass, message, facts]) => ({
    part: sheet.pieces[piece].name,
    buds,
    pass: PASSES[pass],
    why: message < 0 ? words.withoutReason(pass) : words.reason(sheet, message, facts, rules, buds),
  }));
}

/** What is said of wood, as on the handbook's other pages. */
class WoodWords extends Words {
  /**
   * @param {PackedPractice} packed
   * @param {Sheet} sheet
   */
  pieces(packed, sheet) {
    const said = sheet.pieces.map((piece, number) => [
      piece.name,
      { label: this.label(piece), facts: this.facts(piece, packed.vine.shapes[number]) },
    ]);
    return /** @type {Record<string, {label: string, facts: string}>} */ (Object.fromEntries(said));
  }

  /**
   * @param {string} key
   * @param {Facts} facts
   */
  told(key, facts) {
    return this.fill(this.strings[key], facts);
  }

  /** @param {SheetPiece} piece */
  label(piece) {
    const [name, cane] = piece.name.split(" above ");
    if (piece.kind === "cane") return this.told("wood.cane", { name });
    return cane === undefined
      ? this.told("wood.old", { name })
      : this.told("wood.old-above", { name, cane });
  }

  /**
   * @param {SheetPiece} piece
   * @param {import("./practice_drawing.mjs").PackedShape} shape
   */
  facts(piece, [condition, lean, age, length_mm, height]) {
    const said = [this.told("wood.thick", { length_mm: piece.thickness })];
    if (piece.kind === "cane") {
      const key = height >= 0 ? "wood.low-bud" : "wood.low-bud-under";
      said.push(this.number("wood.buds-facts", piece.states - 1));
      said.push(this.told(key, { length_mm: Math.abs(height) }));
    } else {
      said.push(this.number("wood.years", age), this.told("wood.long", { length_mm }));
    }
    if (condition > 0) said.push(this.told(`wood.condition.${CONDITIONS[condition]}`, {}));
    if (lean > 0) said.push(this.told(`wood.lean.${LEANS[lean]}`, {}));
    return said.join(", ");
  }

  /**
   * @param {string} key
   * @param {number} n
   */
  number(key, n) {
    return this.told(`${key}.${n === 1 ? "one" : "many"}`, { n });
  }

  /**
   * @param {Sheet} sheet
   * @param {number} message
   * @param {Facts} facts
   * @param {Record<string, RuleWords>} rules
   * @param {number | null} buds  what the cut leaves; null where it takes a whole piece
   */
  reason(sheet, message, facts, rules, buds) {
    const { rule, name } = sheet.messages[message];
    const what = this.fill(rules[rule].messages[name], facts);
    return this.told(`case.plan.reason.${buds === null ? "stays" : "longer"}`, { what });
  }

  /** @param {number} pass */
  withoutReason(pass) {
    return this.told(pass === 0 ? "practice.rough" : "practice.tie", {});
  }
}
