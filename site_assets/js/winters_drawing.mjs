/**
 * The drawing of a vine whose positions have different stories, put together from drawings of
 * vines on which one story was followed everywhere. All are to one scale.
 */

import { copyOf, markFallen } from "./winter_stage.mjs";

/**
 * @param {ParentNode} page
 * @param {string} story  such as "nf": near, then far
 * @returns {SVGSVGElement}
 */
function drawingOf(page, story) {
  const found = page.querySelector(`svg.pw-vine[data-story="${story}"]`);
  if (found === null) throw new Error(`no drawing of ${story}`);
  return /** @type {SVGSVGElement} */ (found);
}

/**
 * @param {ParentNode} page
 * @param {readonly string[]} positions
 * @param {readonly string[]} stories  by position
 * @param {string} label
 * @returns {SVGSVGElement}
 */
export function mixedDrawing(page, positions, stories, label) {
  // The first winter's drawing has the arm and the wires as well, which stay what they are.
  const mixed = /** @type {SVGSVGElement} */ (drawingOf(page, "").cloneNode(true));
  positions.forEach((name, position) => {
    if (stories[position] !== "") exchange(mixed, drawingOf(page, stories[position]), name);
  });
  return copyOf(mixed, label);
}

/**
 * Puts one position's wood in the place of another story's; canes stay behind older wood.
 *
 * @param {SVGSVGElement} mixed
 * @param {SVGSVGElement} other
 * @param {string} position
 */
function exchange(mixed, other, position) {
  for (const layer of [".pw-wood-all", ".pw-wood-front"]) {
    const to = mixed.querySelector(layer);
    const here = `[data-part][data-position="${position}"]`;
    for (const old of to?.querySelectorAll(here) ?? []) old.remove();
    const firstOld = to?.querySelector(".pw-old") ?? null;
    for (const group of other.querySelectorAll(`${layer} ${here}`)) {
      to?.insertBefore(
        group.cloneNode(true),
        group.classList.contains("pw-cane") ? firstOld : null,
      );
    }
  }
}

const OFF = { n: "pw-off-near", f: "pw-off-far" };

/**
 * Shows what stays: what comes off by the choice at its position is dotted.
 *
 * @param {SVGSVGElement} svg
 * @param {readonly string[]} positions
 * @param {readonly ("n" | "f" | null)[]} choices  null where nothing is chosen yet
 */
export function showChoices(svg, positions, choices) {
  for (const group of svg.querySelectorAll("[data-part]")) {
    const choice = choices[positions.indexOf(group.getAttribute("data-position") ?? "")] ?? null;
    for (const wood of [group, ...group.querySelectorAll(".pw-stretch")]) {
      wood.classList.toggle("pw-gone", choice !== null && wood.classList.contains(OFF[choice]));
    }
  }
  markFallen(svg);
}
