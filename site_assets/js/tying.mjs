/** Canes that are tied along the wire after the last cut: which they are, and what is charged. */

/** @import {Broken, DoneCut, Facts, Sheet, Where, WireSide} from "./types.mjs" */

/** @param {{pass: string}} history */
export function isTying(history) {
  return history.pass === "tie";
}

/**
 * Pieces that are to be tied along the wire as they are left now, along the line.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @returns {number[]}
 */
export function canesToTie(sheet, states) {
  const what = sheet.tallies?.find(({ name }) => name === sheet.cutting.tie?.tally);
  if (what === undefined) return [];
  return states.flatMap((state, number) => (what.counts[number][state] > 0 ? [number] : []));
}

/**
 * The side of the wire that each cane was tied to last, by the cane's name.
 *
 * @param {readonly {part: string, tied?: WireSide}[]} doneCuts
 * @returns {Map<string, WireSide>}
 */
export function sidesTied(doneCuts) {
  /** @type {Map<string, WireSide>} */
  const sides = new Map();
  for (const { part, tied } of doneCuts) if (tied !== undefined) sides.set(part, tied);
  return sides;
}

/**
 * Throws RangeError when this piece is not a cane to be tied as it is now.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @param {string} part
 */
export function checkTie(sheet, states, part) {
  if (!canesToTie(sheet, states).some((number) => sheet.pieces[number].name === part)) {
    throw new RangeError(`Nothing to tie: ${part}`);
  }
}

/**
 * What is charged for each cane that should be tied, along the line.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @param {readonly DoneCut[]} doneCuts
 * @param {(sheet: Sheet, charges: number, where: Where, measured?: Facts) => Broken[]} charged
 * @returns {Broken[]}
 */
export function chargesOfTying(sheet, states, doneCuts, charged) {
  const { tie } = sheet.cutting;
  if (tie === undefined) return [];
  const tied = sidesTied(doneCuts);
  const before = { left: 0, right: 0 };
  return canesToTie(sheet, states).flatMap((number) => {
    const part = sheet.pieces[number].name;
    const side = tied.get(part);
    /** @type {Where} */
    const where = { kind: "piece", part };
    if (side === undefined) return charged(sheet, tie.untied, where);
    const byOthers = tie.sides[side];
    const charges = byOthers[Math.min(before[side], byOthers.length - 1)];
    before[side] += 1;
    return charged(sheet, charges, where);
  });
}

/**
 * A cane tied to a side, as a step of the history. No tool and no stub is asked for it; the record
 * of a step has a place for both.
 *
 * @param {string} part
 * @param {WireSide} tied
 * @returns {DoneCut}
 */
export function tieOf(part, tied) {
  return { part, buds: null, pass: "tie", tool: "shears", stub: "right", tied };
}
