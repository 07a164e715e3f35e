/**
 * Names of places on a small picture of a whole vine: each where it can be read.
 *
 * The page for a room has `rowsOfNames`: as many rows as are needed, since no list beside it tells
 * a name that is left out. Here a name goes where marks and other names, as the screen shows them,
 * leave room.
 */

import { turnOf } from "./name_rows.mjs";
import { viewsOf } from "./views.mjs";

const LETTER_PX = 12;
const LEAST_PX = 11.1;
/** As high are the letters beside the wood, and what a letter that stands by itself must be. */
const LETTER_MM = 30;
const SMALLEST_LETTER_PX = 8;
const APART_PX = 5;
/** A name beside the mark of the place in hand, which is two rows high, goes below it. */
const MOST_ROWS = 3;
const EMPTY_SHARE = 0.12;

/** @typedef {{left: number, right: number, top: number, bottom: number}} Area  px on the screen */

/**
 * Lets no letters be smaller than can be read; those beside the wood of a whole vine, which have no
 * room to grow, are left out where they would be: the close-up has them.
 *
 * @param {SVGSVGElement} svg
 * @param {number} pixelsPerMm
 */
export function readable(svg, pixelsPerMm) {
  if (pixelsPerMm === 0) return;
  svg.style.setProperty("--pw-least", `${(LEAST_PX / pixelsPerMm).toFixed(1)}px`);
  svg.classList.toggle("pw-letters-small", LETTER_MM * pixelsPerMm < SMALLEST_LETTER_PX);
}

/**
 * Makes the names as large as can be read. One that would lie over another, or over what is in
 * `taken` already, moves up to three rows away from the wood; where no row is free it is hidden, and
 * the list beside the drawing has it. A name that a mark tells at its place is not told twice.
 *
 * @param {SVGSVGElement} svg
 * @param {number} pixelsPerMm
 * @param {readonly Area[]} taken
 * @param {readonly string[]} told
 */
export function thinNames(svg, pixelsPerMm, taken, told) {
  if (pixelsPerMm === 0) return;
  svg.style.setProperty("--pw-name", `${(LETTER_PX / pixelsPerMm).toFixed(1)}px`);
  const all = namesOf(svg);
  for (const name of all) {
    name.style.removeProperty("transform");
    name.classList.toggle("pw-name-away", told.includes(name.textContent ?? ""));
  }
  const names = all.filter((one) => !one.classList.contains("pw-name-away"));
  const twice = viewsOf(svg) > 1;
  if (!twice && !names.some(isAboveWood)) names.sort((one, other) => turn(one) - turn(other));
  // From above the wood stands all around: a name that moved would stand at other wood.
  const stays = (/** @type {SVGElement} */ name) => twice && name.closest(".pw-places-inside") !== null;
  const ways = names.map((name) => (stays(name) ? 0 : isAboveWood(name) ? -1 : 1));
  const moves = movesOf(names.map(letters), taken, ways);
  names.forEach((name, number) => {
    const move = moves[number];
    name.classList.toggle("pw-name-away", move === null);
    if (move) name.style.transform = `translateY(${(move / pixelsPerMm).toFixed(1)}px)`;
  });
}

/**
 * @param {SVGSVGElement} svg
 * @returns {SVGElement[]}
 */
const namesOf = (svg) => [...svg.querySelectorAll(".pw-place-name")].map((one) => /** @type {SVGElement} */ (one));

/**
 * Where the capitals and numbers of a name are; its box has room for letters below the line too.
 *
 * @param {SVGElement} name
 * @returns {Area}
 */
function letters(name) {
  const { left, right, top, bottom, height } = name.getBoundingClientRect();
  return { left, right, top: top + EMPTY_SHARE * height, bottom: bottom - EMPTY_SHARE * height };
}

/**
 * Whether a name stands above the foot of its wood, as where shoots hang.
 *
 * @param {SVGElement} name
 */
function isAboveWood(name) {
  const foot = name.closest("[data-y]")?.getAttribute("data-y");
  return foot !== null && foot !== undefined && Number(name.getAttribute("y")) < Number(foot);
}

/**
 * When a name below an arm takes its row.
 *
 * @param {SVGElement} name
 */
const turn = (name) => turnOf(Number(name.closest("[data-x]")?.getAttribute("data-x")), Number(name.getAttribute("x")));

/**
 * Leaves the names and heights of the wires out where the edge of the picture would cut one.
 *
 * @param {SVGSVGElement} svg
 */
export function hideCutWords(svg) {
  const { right } = svg.getBoundingClientRect();
  const words = [...svg.querySelectorAll(".pw-wire-name, .pw-wire-height")];
  svg.classList.toggle("pw-words-cut", words.some((one) => one.getBoundingClientRect().right > right));
}

/**
 * Shows all names again as they were drawn.
 *
 * @param {SVGSVGElement} svg
 */
export function allNames(svg) {
  for (const name of namesOf(svg)) {
    name.classList.remove("pw-name-away");
    name.style.removeProperty("transform");
    if (name.style.length === 0) name.removeAttribute("style");
  }
  svg.classList.remove("pw-words-cut", "pw-letters-small");
  svg.style.removeProperty("--pw-name");
  svg.style.removeProperty("--pw-least");
  if (svg.style.length === 0) svg.removeAttribute("style");
}

/**
 * For each area how far it moves to be clear of those before it and of what is taken, by rows of
 * its own height; null where no row is free.
 *
 * @param {readonly Area[]} areas
 * @param {readonly Area[]} taken
 * @param {readonly number[]} ways  of each: 1 for down, -1 for up, 0 where it may not move
 * @returns {(number | null)[]}
 */
export function movesOf(areas, taken, ways) {
  const kept = [...taken];
  return areas.map((area, number) => {
    const rows = ways[number] === 0 ? 0 : MOST_ROWS;
    for (let row = 0; row <= rows; row += 1) {
      const move = row === 0 ? 0 : ways[number] * row * (area.bottom - area.top);
      const { left, right, top, bottom } = area;
      const moved = { left, right, top: top + move, bottom: bottom + move };
      if (!kept.some((one) => meet(one, moved))) {
        kept.push(moved);
        return move;
      }
    }
    return null;
  });
}

/**
 * @param {Area} one
 * @param {Area} other
 */
function meet(one, other) {
  const across = one.left < other.right + APART_PX && other.left < one.right + APART_PX;
  return across && one.top < other.bottom && other.top < one.bottom;
}
