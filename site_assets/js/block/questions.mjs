/** Every sum by its name, and the answer for what a form gives. */

import { cropEstimate, vinesPerArea } from "./area_sums.mjs";
import {
  balancedBuds,
  budsAfterWinter,
  budsByWeight,
  budsForCrop,
  budsThatFit,
  roomOnArms,
} from "./bud_sums.mjs";
import { cropLoad, fruitOfLeaves, roomForLeaves, shootThinning, vigour } from "./canopy_sums.mjs";
import { Fraction } from "./fraction.mjs";
import { BlockError, Range } from "./range.mjs";
import { Shown } from "./shown.mjs";
import { crew, renovation } from "./work_sums.mjs";

/** @import {Answer, BlockPage, Given, PageField, PageQuestion, Value} from "./types.mjs" */

/** @type {Record<string, (given: Given) => Answer>} */
const SUMS = {
  buds: balancedBuds,
  "buds-by-weight": budsByWeight,
  "buds-for-crop": budsForCrop,
  winter: budsAfterWinter,
  room: roomOnArms,
  fit: budsThatFit,
  crop: cropEstimate,
  "crop-load": cropLoad,
  vigour,
  vines: vinesPerArea,
  leaves: roomForLeaves,
  "leaf-fruit": fruitOfLeaves,
  renovation,
  crew,
  thinning: shootThinning,
};

const FORMULA = /^([0-9]{1,3})\s*\+\s*([0-9]{1,3})$/;

/**
 * The value of one field, from its one text or from lowest, most likely and highest.
 *
 * @param {BlockPage} page
 * @param {Shown} shown
 * @param {string} name
 * @param {string[]} texts
 * @returns {Value}
 */
export function readField(page, shown, name, texts) {
  const field = page.fields[name];
  if (field.choices.length > 0) return texts[0];
  if (field.measure === "") return readFormula(texts[0].trim());
  const value = shown.range(texts, field.measure);
  if (!field.ranged && !value.isOne) throw new BlockError("one-number");
  if (page.measures[field.measure].whole && !(value.low.isWhole && value.high.isWhole)) {
    throw new BlockError("not-whole");
  }
  checkBounds(shown, field, value);
  return value;
}

/**
 * @param {Shown} shown
 * @param {PageField} field
 * @param {Range} value
 */
function checkBounds(shown, field, value) {
  const [low, high] = [Fraction.of(field.low), Fraction.of(field.high)];
  if (!value.low.below(low) && !high.below(value.high)) return;
  throw new BlockError("out-of-bounds", "", {
    low: shown.one(low, field.measure),
    high: shown.one(high, field.measure),
  });
}

/** @param {string} text */
function readFormula(text) {
  if (text === "") throw new BlockError("missing");
  const match = FORMULA.exec(text);
  if (match === null || Number(match[1]) === 0) {
    throw new BlockError("not-a-formula", "", { found: text });
  }
  return { first: Fraction.of(match[1]), further: Fraction.of(match[2]) };
}

/**
 * @param {BlockPage} page
 * @param {PageQuestion} question
 * @param {Given} given
 * @returns {Answer}
 */
export function work(page, question, given) {
  return SUMS[question.name]({ ...given, bands: page.bands });
}

/**
 * Everything that is shown of an answer.
 *
 * @param {Shown} shown
 * @param {Answer} found
 */
export function asTexts(shown, found) {
  return {
    figures: found.figures.map((one) => [shown.label(one, found.question), shown.figure(one)]),
    steps: found.steps.map((one) => [shown.sentence("step", one)]),
    remarks: found.remarks.map((one) => [shown.sentence("remark", one)]),
    columns: (found.rows[0] ?? []).map((one) => [shown.say(`figure.${one.name}`)]),
    rows: found.rows.map((row) => row.map((one) => shown.figure(one))),
  };
}
