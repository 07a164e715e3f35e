/**
 * Work on one vine as a short text, because a SCORM 1.2 record keeps 4096 characters.
 *
 * `0013.4,5;1017`: steps between semicolons, each with the numbers of its pass, tool and stub,
 * then its cuts: the number of the piece in base 36, and after a point the buds that it leaves.
 * A cane that was tied has after a point `l` or `r`, its side of the wire.
 * Steps that were undone are not kept. `generator/pencilwood/packages/scorm/room.py` computes
 * how long the text can get.
 */

import { STUBS, TOOLS } from "../how_panel.mjs";
import { takeUp } from "../saved_work.mjs";
import { PASSES } from "../scoring.mjs";

/** @import {Work} from "../saved_work.mjs" */
/** @import {DoneCut, Sheet} from "../types.mjs" */
/** @import {CutStep, History} from "../wood.mjs" */

/** @typedef {[done: number, closer: number, open: number, how: string, position: number, pass: string, steps: string]} PackedWork */

const PIECES = 36;

/**
 * @param {Sheet} sheet
 * @param {Work} work
 * @returns {PackedWork}
 */
export function packWork(sheet, work) {
  const { history, how } = work;
  const numbers = new Map(sheet.pieces.map(({ name }, number) => [name, number.toString(PIECES)]));
  const steps = sinceLastStart(history).map((step) => packStep(step, numbers));
  const chosen = digit(TOOLS, how.tool) + digit(STUBS, how.stub);
  const flags = [work.done, work.closer, work.measuresOpen].map(Number);
  const pass = digit(PASSES, history.pass);
  return [flags[0], flags[1], flags[2], chosen, work.position, pass, steps.join(";")];
}

/**
 * The steps that count. What was taken back by a fresh start can't be undone after a break.
 *
 * @param {History} history
 * @returns {CutStep[]}
 */
function sinceLastStart({ steps, done }) {
  /** @type {CutStep[]} */
  let counted = [];
  for (const step of steps.slice(0, done)) counted = "again" in step ? [] : [...counted, step];
  return counted;
}

/**
 * @param {CutStep} step
 * @param {Map<string, string>} numbers
 */
function packStep({ cuts }, numbers) {
  const [{ pass, tool, stub }] = cuts;
  const packed = cuts.map(({ part, buds, tied }) => {
    const number = numbers.get(part) ?? "";
    if (tied !== undefined) return `${number}.${tied[0]}`;
    return buds === null ? number : `${number}.${buds}`;
  });
  return digit(PASSES, pass) + digit(TOOLS, tool) + digit(STUBS, stub) + packed.join(",");
}

/**
 * @param {Sheet} sheet
 * @param {unknown} packed
 * @returns {Work | null}  null when it isn't work on this very vine
 */
export function unpackWork(sheet, packed) {
  try {
    const [done, closer, open, how, position, pass, text] = /** @type {PackedWork} */ (packed);
    const steps = text === "" ? [] : text.split(";").map((step) => unpackStep(sheet, step));
    const history = { steps, done: steps.length, pass: named(PASSES, pass) };
    const chosen = { tool: named(TOOLS, how[0]), stub: named(STUBS, how[1]) };
    const flags = { done: done === 1, closer: closer === 1, measuresOpen: open === 1 };
    // Every cut is replayed there, so that nothing wrong comes back.
    const work = takeUp(sheet, { history, how: chosen, position, ...flags });
    const same = work.history.steps.length === steps.length && work.history.pass === history.pass;
    return same ? work : null;
  } catch {
    return null;
  }
}

/**
 * @param {Sheet} sheet
 * @param {string} text
 * @returns {CutStep}
 */
function unpackStep(sheet, text) {
  const how = { pass: named(PASSES, text[0]), tool: named(TOOLS, text[1]), stub: named(STUBS, text[2]) };
  const cuts = text.slice(3).split(",").map((cut) => {
    const [number, buds] = cut.split(".");
    const part = sheet.pieces[Number.parseInt(number, PIECES)].name;
    if (buds === "l" || buds === "r") {
      return /** @type {DoneCut} */ ({ part, buds: null, ...how, tied: buds === "l" ? "left" : "right" });
    }
    return /** @type {DoneCut} */ ({ part, buds: buds === undefined ? null : Number(buds), ...how });
  });
  return { cuts };
}

/**
 * @param {readonly string[]} names
 * @param {string | null} name
 */
function digit(names, name) {
  return name === null ? "-" : `${names.indexOf(name)}`;
}

/**
 * @template {string} T
 * @param {readonly T[]} names
 * @param {string} digit
 * @returns {T | null}
 */
function named(names, digit) {
  return names[Number(digit)] ?? null;
}
