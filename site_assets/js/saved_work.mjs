/** What is kept of an exercise on the device, and how it is taken up again. */

import { STUBS, TOOLS } from "./how_panel.mjs";
import { replay, start } from "./wood.mjs";

/** @import {How} from "./how_panel.mjs" */
/** @import {History} from "./wood.mjs" */
/** @import {Sheet} from "./types.mjs" */

/**
 * @typedef {object} Work
 * @property {History} history
 * @property {How} how
 * @property {number} position  the position that is being looked at
 * @property {boolean} near  whether the close-up is looked at, and not the whole vine
 * @property {boolean} closer
 * @property {boolean} measuresOpen
 * @property {boolean} done  whether the result is shown
 */

/**
 * @param {Pick<Sheet, "cutting">} [sheet]  left out: a vine with all passes
 * @returns {Work}
 */
export function freshWork(sheet) {
  const how = { tool: null, stub: null };
  const history = start(sheet?.cutting.passes);
  const closer = looksCloser(history);
  return { history, how, position: 0, near: false, closer, measuresOpen: true, done: false };
}

/**
 * The rough pass looks at whole canes, the others at their lowest buds: long canes would leave no
 * room to tell the pieces apart that stand near the head.
 *
 * @param {{pass: string}} history
 */
export function looksCloser(history) {
  return history.pass !== "rough";
}

/** Of sheets that do not say theirs: it takes a while, and work is kept at every cut. */
const versions = /** @type {WeakMap<Sheet, string>} */ (new WeakMap());

/**
 * Names this very sheet, so that work on a vine that has since changed isn't taken up again.
 *
 * @param {Sheet} sheet  never changed once it has been asked about
 * @returns {string}
 */
export function versionOf(sheet) {
  if (sheet.version !== undefined) return sheet.version;
  const version = versions.get(sheet) ?? hashOf(sheet);
  versions.set(sheet, version);
  return version;
}

/** @param {Sheet} sheet */
function hashOf(sheet) {
  let hash = 2166136261;
  const text = JSON.stringify(sheet);
  for (let at = 0; at < text.length; at += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(at), 16777619) >>> 0;
  }
  return hash.toString(36);
}

/**
 * Work as it is kept; `workOf` reads it again.
 *
 * @param {Sheet} sheet
 * @param {Work} work
 */
export function asKept(sheet, work) {
  return { version: versionOf(sheet), work };
}

/**
 * The work that was kept of this very sheet; null when there is none.
 *
 * @param {Sheet} sheet
 * @param {unknown} found  what was kept under the vine's key
 * @returns {Work | null}
 */
export function workOf(sheet, found) {
  const was = /** @type {Partial<ReturnType<typeof asKept>> | null} */ (found);
  return was?.version === versionOf(sheet) ? takeUp(sheet, was.work) : null;
}

/**
 * Kept work, checked piece by piece: whatever doesn't fit this sheet starts fresh.
 *
 * @param {Sheet} sheet
 * @param {unknown} kept
 * @returns {Work}
 */
export function takeUp(sheet, kept) {
  const fresh = freshWork(sheet);
  if (typeof kept !== "object" || kept === null) return fresh;
  const work = /** @type {Partial<Work>} */ (kept);
  const history = takeUpHistory(sheet, work.history);
  if (history === null) return fresh;
  const position = Number(work.position);
  return {
    history,
    how: {
      tool: TOOLS.find((tool) => tool === work.how?.tool) ?? null,
      stub: STUBS.find((stub) => stub === work.how?.stub) ?? null,
    },
    position: position in sheet.positions ? position : 0,
    near: work.near === true,
    closer: work.closer === true,
    measuresOpen: work.measuresOpen !== false,
    done: work.done === true,
  };
}

/**
 * @param {Sheet} sheet
 * @param {History | undefined} history
 * @returns {History | null}
 */
function takeUpHistory(sheet, history) {
  try {
    if (history === undefined || !sheet.cutting.passes.includes(history.pass)) return null;
    if (!Number.isInteger(history.done) || history.done < 0) return null;
    if (history.done > history.steps.length) return null;
    // Replaying every step proves that each cut, undone ones too, still fits this vine.
    replay(sheet, { ...history, done: history.steps.length });
    return history;
  } catch {
    return null;
  }
}
