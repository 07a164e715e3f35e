/** Live measures of the wood that is left. They are added up from the sheet; none is a rule. */

import { budsKept, spacings, spurs, stretches } from "./scoring.mjs";

/**
 * @typedef {object} Measures
 * @property {number} budsKept
 * @property {number} budsPerMetreTenths  tenths of a bud for each metre of arm, half rounded up
 * @property {number} budsPerFootTenths
 * @property {number} spurs
 * @property {number | null} smallestSpacing  mm; null with fewer than two spurs
 * @property {number} longestBlank  mm
 * @property {Map<string, number>} tallies  by the name of what the vine's form counts
 */

/**
 * @param {import("./types.mjs").Sheet} sheet
 * @param {readonly number[]} states
 * @returns {Measures}
 */
export function measure(sheet, states) {
  const buds = budsKept(sheet, states);
  const gaps = spacings(sheet, states).map(({ mm }) => mm);
  return {
    budsKept: buds,
    budsPerMetreTenths: divide(buds * 10_000, sheet.armLength),
    budsPerFootTenths: divide(buds * 3_048, sheet.armLength),
    spurs: spurs(sheet, states).length,
    smallestSpacing: gaps.length === 0 ? null : Math.min(...gaps),
    longestBlank: Math.max(...stretches(sheet, states).map(({ mm }) => mm)),
    tallies: new Map((sheet.tallies ?? []).map(({ name, counts }) => [name, counted(counts, states)])),
  };
}

/**
 * @param {readonly (readonly number[])[]} counts  by piece and its state
 * @param {readonly number[]} states
 */
function counted(counts, states) {
  return states.reduce((sum, state, number) => sum + counts[number][state], 0);
}

/**
 * Whole-number division, exactly half rounded up, as the handbook's other pages round.
 *
 * @param {number} top
 * @param {number} bottom
 */
function divide(top, bottom) {
  return Math.floor((2 * top + bottom) / (2 * bottom));
}
