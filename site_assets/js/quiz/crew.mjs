/** The crew list: slips that a trainer gathered, and the table of them for a spreadsheet. */

import { FIELDS, codeOf, readLine } from "./slip.mjs";

/** @import {Fault, Slip} from "./slip.mjs" */

/** How a formula begins, also after gaps and in the full-width signs of some keyboards. */
const FORMULA = /^[\s\p{Cc}\p{Cf}]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u;

/**
 * @typedef {object} Gathered
 * @property {Slip[]} added
 * @property {number} twice  slips that are on the list already
 * @property {{line: number, fault: Fault}[]} faults
 */

/**
 * Reads pasted lines; empty ones are passed over.
 *
 * @param {string} text
 * @param {readonly Slip[]} list  what is on the list already
 * @returns {Gathered}
 */
export function gather(text, list) {
  /** @type {Gathered} */
  const gathered = { added: [], twice: 0, faults: [] };
  text.split(/\r\n|[\n\r\u2028\u2029]/).forEach((line, number) => {
    if (line.trim() === "") return;
    const { slip, fault } = readLine(line);
    if (slip === null) gathered.faults.push({ line: number + 1, fault });
    else if (isListed(slip, [...list, ...gathered.added])) gathered.twice += 1;
    else gathered.added.push(slip);
  });
  return gathered;
}

/**
 * @param {Slip} slip
 * @param {readonly Slip[]} list
 */
export function isListed(slip, list) {
  return list.some((one) => FIELDS.every((field) => one[field] === slip[field]));
}

/**
 * What was kept on the device, without anything that is not a slip.
 *
 * @param {unknown} kept
 * @returns {Slip[]}
 */
export function takeUpList(kept) {
  if (!Array.isArray(kept)) return [];
  return kept.filter(
    (one) =>
      typeof one === "object" &&
      one !== null &&
      FIELDS.every((field) => typeof one[field] === "string"),
  );
}

/**
 * A comma-separated table (RFC 4180) that opens in a spreadsheet with its accents.
 *
 * @param {readonly Slip[]} slips
 * @param {readonly string[]} headings  one for each field and one for the code
 */
export function asCsv(slips, headings) {
  const rows = slips.map((slip) => [...FIELDS.map((field) => slip[field]), codeOf(slip)]);
  const lines = [headings, ...rows].map((row) => row.map(cell).join(","));
  // The mark at the start tells a spreadsheet that this is Unicode.
  return `\ufeff${lines.join("\r\n")}\r\n`;
}

/**
 * A name that begins like a formula would be worked out by a spreadsheet: an apostrophe before
 * it keeps it a text.
 *
 * @param {string} text
 */
function cell(text) {
  const guarded = FORMULA.test(text) ? `'${text}` : text;
  return `"${guarded.replace(/"/g, '""')}"`;
}
