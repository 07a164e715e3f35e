/** The completion slip as plain text: one line that can be copied, pasted and checked. */

import { checkCode, tidyCode } from "./check_code.mjs";
import { isDate } from "./days.mjs";

/**
 * @typedef {object} Slip
 * @property {string} name
 * @property {string} language  language used, `es`
 * @property {string} quiz  name of the quiz, `first-week`
 * @property {string} version  of the quiz
 * @property {string} score  points of 100, as written
 * @property {string} date  `2026-01-31`
 * @property {string} topics
 *
 * @typedef {"shape" | "name" | "language" | "quiz" | "version" | "score" | "date" | "topics" | "code"} Fault
 * @typedef {{slip: Slip, fault: null} | {slip: null, fault: Fault}} Read
 */

/** In the order in which they stand on the slip and in the list. */
export const FIELDS = /** @type {const} */ ([
  "name",
  "language",
  "quiz",
  "version",
  "score",
  "date",
  "topics",
]);
const MARK = "PENCILWOOD-1";
const BETWEEN = " | ";
const LONGEST_FIELD = 400;

/** @param {Slip} slip */
export function codeOf(slip) {
  return checkCode(FIELDS.map((field) => slip[field]));
}

/**
 * The slip in one line.
 *
 * @param {Slip} slip
 */
export function slipLine(slip) {
  const tidy = tidySlip(slip);
  return [MARK, ...FIELDS.map((field) => tidy[field]), codeOf(tidy)].join(BETWEEN);
}

/** @param {Slip} slip */
export function tidySlip(slip) {
  const fields = Object.fromEntries(FIELDS.map((field) => [field, tidyField(slip[field])]));
  return /** @type {Slip} */ (/** @type {unknown} */ (fields));
}

/**
 * What somebody typed as a field, without signs that would break the line.
 *
 * @param {string} text
 */
export function tidyField(text) {
  return text
    .normalize("NFC")
    .replace(/[|\p{Cc}\p{Cf}\u2028\u2029]+/gu, " ")
    .replace(/\s+/g, " ")
    .trim()
    .slice(0, LONGEST_FIELD)
    .trim();
}

/**
 * @param {string} line
 * @returns {Read}
 */
export function readLine(line) {
  const parts = line.split("|").map((part) => part.trim());
  if (parts.length !== FIELDS.length + 2 || parts[0] !== MARK) return { slip: null, fault: "shape" };
  const fields = Object.fromEntries(FIELDS.map((field, at) => [field, parts[at + 1]]));
  return checkSlip(/** @type {Slip} */ (/** @type {unknown} */ (fields)), parts[parts.length - 1]);
}

/**
 * A slip that was typed: every field there and possible, and the code fits.
 *
 * @param {Slip} typed
 * @param {string} code
 * @returns {Read}
 */
export function checkSlip(typed, code) {
  const slip = tidySlip(typed);
  const fault = faultOf(slip);
  if (fault !== null) return { slip: null, fault };
  if (tidyCode(code) !== codeOf(slip)) return { slip: null, fault: "code" };
  return { slip, fault: null };
}

/**
 * @param {Slip} slip
 * @returns {Fault | null}
 */
function faultOf(slip) {
  const empty = FIELDS.find((field) => slip[field] === "");
  if (empty !== undefined) return empty;
  if (!/^\d{1,3}$/.test(slip.score) || Number(slip.score) > 100) return "score";
  return isDate(slip.date) ? null : "date";
}
