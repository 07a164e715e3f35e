/** Where the letters of a practice vine stand: beside their wood, clear of all other wood. */

import { beside, between, text } from "./strokes.mjs";

/** @import {Point} from "./strokes.mjs" */

/**
 * @typedef {object} Stem  a piece of wood from its foot to its tip
 * @property {Point[]} points
 * @property {number} half
 *
 * @typedef {object} Taken
 * @property {(at: Point, enough: number) => number} room  as far as it is known to be less than enough
 * @property {(at: Point) => void} add  a letter stands there
 */

const LETTER_MM = 30;
/** Letters have room to be so high: a page shows them larger on paper. */
const ROOM_MM = 40;
/** Of the room for a letter: half its height; what it needs around its middle; less would be on wood. */
const [HALF, ENOUGH, TIGHT] = [0.5, 0.45, 0.3];
const SHARES = [0.55, 0.75, 0.4];

/**
 * @param {Stem[]} stems
 * @returns {Taken}
 */
export function takenBy(stems) {
  const wood = stems.flatMap(({ points, half }) => points.slice(1).map((to, number) => ({ from: points[number], to, half })));
  /** @type {Point[]} */
  const letters = [];
  return {
    room(at, enough) {
      let room = enough;
      for (const { x, y } of letters) room = Math.min(room, Math.hypot(at.x - x, at.y - y) - ROOM_MM * HALF);
      for (const { from, to, half } of wood) room = Math.min(room, distance(at, from, to) - half);
      return room;
    },
    add: (at) => void letters.push(at),
  };
}

/**
 * The letter of a piece where it has the most room; where that is too little only the close-up has it.
 *
 * @param {string} letter
 * @param {Stem} stem
 * @param {Taken} taken
 */
export function letterBeside(letter, { points, half }, taken) {
  let best = { at: points[0], room: -Infinity };
  for (const at of places(points, half)) {
    const room = taken.room(at, ROOM_MM * ENOUGH);
    if (room > best.room) best = { at, room };
  }
  const isTight = best.room < ROOM_MM * TIGHT;
  if (!isTight) taken.add(best.at);
  const { x, y } = best.at;
  return text(letter, isTight ? "pw-letter pw-tight" : "pw-letter", LETTER_MM, x, y + LETTER_MM * 0.3);
}

/**
 * From the foot up, on both sides: beside short wood that stands up, not over what bears it.
 *
 * @param {Point[]} points
 * @param {number} half
 */
function* places(points, half) {
  const lowest = points[1].y < points[0].y ? points[0].y - LETTER_MM * HALF : Infinity;
  const stretches = points.length > 3 ? points.slice(0, 3) : points.slice(0, 1);
  for (const [number, from] of stretches.entries()) {
    for (const share of SHARES) {
      for (const side of [1, -1]) {
        const to = points[number + 1];
        const { x, y } = beside(from, to, between(from, to, share), side * (half + ROOM_MM * ENOUGH));
        yield { x, y: Math.min(y, lowest) };
      }
    }
  }
}

/**
 * @param {Point} at
 * @param {Point} from
 * @param {Point} to
 */
function distance(at, from, to) {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const along = ((at.x - from.x) * x + (at.y - from.y) * y) / (x * x + y * y || 1);
  const { x: nearX, y: nearY } = between(from, to, Math.min(1, Math.max(0, along)));
  return Math.hypot(at.x - nearX, at.y - nearY);
}
