/** What an exercise takes from its page, and what it tells the page when it is scored. */

import { readJson } from "./script_json.mjs";

/** @import {PageWords, Result, Sheet} from "./types.mjs" */

/**
 * @param {ParentNode} root
 * @returns {{sheet: Sheet, page: PageWords, svg: SVGSVGElement}}
 */
export function readPage(root) {
  return {
    sheet: readJson(root, "pw-sheet"),
    page: readJson(root, "pw-words"),
    svg: /** @type {SVGSVGElement} */ (root.querySelector("svg.pw-vine")),
  };
}

/**
 * Keeps a score on the device and tells it to whoever listens on the page.
 *
 * @param {HTMLElement} root
 * @param {import("./storage.mjs").Keeper} keeper
 * @param {{case: string, version: string}} which
 * @param {Result} result
 */
export function tellScore(root, keeper, which, { score, cutting, passed }) {
  const detail = { ...which, score, cutting: cutting.score, passed };
  keeper.write(`score:${which.case}`, detail);
  root.dispatchEvent(new CustomEvent("pencilwood:scored", { bubbles: true, detail }));
}
