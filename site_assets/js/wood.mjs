/**
 * What a learner has cut so far: an immutable history, replayed into the wood that is left.
 * The history is plain JSON, so that it can be kept on the phone and taken up again.
 */

/** @import {DoneCut, PassName, Sheet} from "./types.mjs" */

import { PASSES } from "./scoring.mjs";
import { checkTie } from "./tying.mjs";

const CUTTING_PASSES = PASSES.slice(0, 3);

/**
 * @typedef {{cuts: DoneCut[]}} CutStep  cuts that are taken back together
 * @typedef {{again: true, from: PassName}} AgainStep  everything taken back; `from` is the pass left
 * @typedef {CutStep | AgainStep} Step
 *
 * @typedef {object} History
 * @property {Step[]} steps
 * @property {number} done  how many of the steps count; the rest can be redone
 * @property {PassName} pass  the pass the learner is in
 *
 * @typedef {object} Wood
 * @property {number[]} states  for each piece its buds (cane) or 1 (older wood), 0 when gone
 * @property {DoneCut[]} cuts
 */

/**
 * @param {readonly PassName[]} passes  of the vine's form
 * @returns {History}
 */
export function start(passes = PASSES) {
  return { steps: [], done: 0, pass: passes[0] };
}

/**
 * @param {Sheet} sheet
 * @returns {number[]}
 */
export function uncut(sheet) {
  return sheet.pieces.map((piece) => piece.states - 1);
}

/**
 * The wood that is left after the steps that count.
 *
 * @param {Sheet} sheet
 * @param {History} history
 * @returns {Wood}
 */
export function replay(sheet, history) {
  let states = uncut(sheet);
  /** @type {DoneCut[]} */
  let cuts = [];
  for (const step of history.steps.slice(0, history.done)) {
    if ("again" in step) {
      states = uncut(sheet);
      cuts = [];
      continue;
    }
    for (const cut of step.cuts) {
      if (cut.tied === undefined) states = cutWood(sheet, states, cut.part, cut.buds);
      else checkTie(sheet, states, cut.part);
    }
    cuts = [...cuts, ...step.cuts];
  }
  return { states, cuts };
}

/**
 * The wood left after one more cut. Throws RangeError when there is nothing to cut there.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @param {string} part
 * @param {number | null} buds  null takes the part off
 * @returns {number[]}
 */
export function cutWood(sheet, states, part, buds) {
  const number = sheet.pieces.findIndex((piece) => piece.name === part);
  const allowed = number < 0 ? [] : legalCuts(sheet, states, number);
  if (!allowed.includes(buds)) throw new RangeError(`Nothing to cut: ${part}, ${buds}`);
  const next = [...states];
  next[number] = buds ?? 0;
  if (buds === null) for (const other of sheet.pieces[number].carries) next[other] = 0;
  return next;
}

/**
 * What can be done to a piece: the numbers of buds that can be left, and null to take it off.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @param {number} number  index of the piece
 * @returns {(number | null)[]}
 */
export function legalCuts(sheet, states, number) {
  const state = states[number];
  if (state === 0) return [];
  if (sheet.pieces[number].kind === "old") return [null];
  return [null, ...Array.from({ length: state - 1 }, (_, less) => less + 1)];
}

/**
 * @param {Sheet} sheet
 * @param {number} position
 * @returns {number[]}  indices of its pieces
 */
export function piecesAt(sheet, position) {
  return sheet.pieces.flatMap((piece, number) => (piece.position === position ? [number] : []));
}

/**
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @param {number} position
 * @returns {number}  the piece to begin with: a cane, where one is left
 */
export function firstPiece(sheet, states, position) {
  const own = piecesAt(sheet, position);
  const left = own.filter((piece) => states[piece] > 0);
  return left.find((piece) => sheet.pieces[piece].kind === "cane") ?? left[0] ?? own[0] ?? 0;
}

/**
 * Cuts that bring every cane with more buds down to `buds`.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @param {number} buds
 * @param {Pick<DoneCut, "pass" | "tool" | "stub">} how
 * @returns {DoneCut[]}
 */
export function shortenAll(sheet, states, buds, how) {
  return sheet.pieces.flatMap((piece, number) =>
    piece.kind === "cane" && states[number] > buds ? [{ part: piece.name, buds, ...how }] : [],
  );
}

/**
 * One more step of cuts; steps that could have been redone are forgotten.
 *
 * @param {History} history
 * @param {DoneCut[]} cuts
 * @returns {History}
 */
export function addCuts(history, cuts) {
  return { ...history, ...appended(history, { cuts }) };
}

/**
 * Everything taken back, as a step that can itself be taken back.
 *
 * @param {History} history
 * @param {PassName} [first]  the first pass of the vine's form
 * @returns {History}
 */
export function startAgain(history, first = "rough") {
  return { ...appended(history, { again: true, from: history.pass }), pass: first };
}

/**
 * @param {History} history
 * @param {Step} step
 */
function appended(history, step) {
  const steps = [...history.steps.slice(0, history.done), step];
  return { steps, done: steps.length };
}

/**
 * @param {History} history
 * @returns {History}
 */
export function undo(history) {
  if (history.done === 0) return history;
  const step = history.steps[history.done - 1];
  return { ...history, done: history.done - 1, pass: "again" in step ? step.from : history.pass };
}

/**
 * @param {History} history
 * @param {PassName} [first]  the first pass of the vine's form
 * @returns {History}
 */
export function redo(history, first = "rough") {
  if (history.done === history.steps.length) return history;
  const step = history.steps[history.done];
  return { ...history, done: history.done + 1, pass: "again" in step ? first : history.pass };
}

/**
 * The next pass (`by` 1) or the one before (`by` -1), as far as there is one.
 *
 * @param {History} history
 * @param {1 | -1} by
 * @param {readonly PassName[]} [passes]  of the vine's form
 * @returns {History}
 */
export function changePass(history, by, passes = CUTTING_PASSES) {
  const to = passes[passes.indexOf(history.pass) + by];
  return to === undefined ? history : { ...history, pass: to };
}

/**
 * Whether a cut made now would come after a cut of a later pass.
 *
 * @param {History} history
 * @param {readonly DoneCut[]} cuts
 */
export function isOutOfOrder(history, cuts) {
  const now = PASSES.indexOf(history.pass);
  return cuts.some((cut) => PASSES.indexOf(cut.pass) > now);
}
