/** Where the page for a room puts what it shows: the part of the drawing, its middle, its names. */

import { NAME_GAP, NAME_WIDTH } from "./name_rows.mjs";

const NEAR_WIDTH_MM = 640;
const NEAR_MARGIN_MM = 220;
const NEAR_HEIGHT_MM = 460;
const NEAR_LIFT_MM = 80;
const MOST_NEAR = 3;

/** @typedef {{x: number, y: number, width: number, height: number}} Box  in user units, mm */

/**
 * The part of the drawing to show: near the places in question, if they are few and together.
 *
 * @param {Box} whole
 * @param {readonly {x: number, y: number}[]} feet
 * @returns {Box}
 */
export function boxAround(whole, feet) {
  if (feet.length === 0 || feet.length > MOST_NEAR) return whole;
  const xs = feet.map((foot) => foot.x);
  const left = Math.min(...xs);
  const width = Math.max(NEAR_WIDTH_MM, Math.max(...xs) - left + 2 * NEAR_MARGIN_MM);
  if (width >= whole.width) return whole;
  const middle = (left + Math.max(...xs)) / 2;
  const height = Math.min(NEAR_HEIGHT_MM, whole.height);
  // Below the feet stand the names; where shoots hang, the names stand above.
  const hangs = feet.every((foot) => foot.y < whole.y + whole.height / 2);
  const y = hangs ? whole.y + NEAR_LIFT_MM : whole.y + whole.height - height - NEAR_LIFT_MM;
  return { x: middle - width / 2, y, width, height };
}

/**
 * The same part with paper on its left, so that the drawing stands in the middle of its room; or as
 * far left of the middle as it must for words at the right to lie over no wood.
 *
 * @param {Box} box
 * @param {{width: number, height: number}} room  px
 * @param {number} clear  px of that width, from the left, that no words lie over
 * @returns {Box}
 */
export function centred(box, room, clear) {
  const scale = Math.min(room.width / box.width, room.height / box.height);
  const drawn = box.width * scale;
  const aside = Math.max(0, Math.min((room.width - drawn) / 2, clear - drawn)) / scale;
  return { ...box, x: box.x - aside };
}

/**
 * Moves a name aside so that it does not lie over the trunk, which stands at 0.
 *
 * @param {number} x  middle of the name
 * @param {string} text
 * @param {number} letter  height of a letter
 * @param {number} half  half the thickness of the trunk
 * @returns {number}
 */
export function clearOfTrunk(x, text, letter, half) {
  const clear = half + (text.length * letter * NAME_WIDTH) / 2 + letter * 0.2;
  return x < 0 ? Math.min(x, -clear) : Math.max(x, clear);
}

/**
 * How far from the middle names of one side of a head stand, so that none covers another and all are
 * in sight; as they were drawn where there is no room for that.
 *
 * @param {readonly {away: number, text: string}[]} names  from the head outward
 * @param {number} letter  height of a letter
 * @param {number} edge  how far from the middle the screen ends on that side
 * @returns {number[]}
 */
export function fannedOut(names, letter, edge) {
  const halves = names.map(({ text }) => (text.length * NAME_WIDTH + NAME_GAP) * (letter / 2));
  /** @type {number[]} */
  const out = [];
  names.forEach(({ away }, number) => {
    const clear = number === 0 ? away : out[number - 1] + halves[number - 1] + halves[number];
    out.push(Math.max(away, clear));
  });
  let end = edge;
  for (let number = out.length - 1; number >= 0; number -= 1) {
    out[number] = Math.min(out[number], end - halves[number]);
    end = out[number] - halves[number];
  }
  const drawn = names.map(({ away }) => away);
  return out.length > 0 && out[0] < drawn[0] - halves[0] ? drawn : out;
}

/**
 * Moves a name that the edge of the screen would cut into sight; one that is out of sight stays there.
 *
 * @param {{x: number, width: number}} shown  what is in sight
 * @param {number} x  middle of the name
 * @param {string} text
 * @param {number} letter  height of a letter
 * @returns {number}
 */
export function insideOf(shown, x, text, letter) {
  const half = (text.length * letter * NAME_WIDTH) / 2;
  const [first, last] = [shown.x + half, shown.x + shown.width - half];
  if (Math.abs(x - shown.x) < half) return first;
  return Math.abs(x - shown.x - shown.width) < half ? last : x;
}
