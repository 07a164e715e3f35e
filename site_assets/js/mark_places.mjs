/**
 * Where numbers go on a drawing: each beside what it speaks of, with a line to it, and over no
 * other number, no name and no letter where that can be helped. All in px on the screen.
 */

import { isIn, meet } from "./areas.mjs";

/** @import {Area} from "./areas.mjs" */

/** @typedef {{left: number, top: number}} Spot */
/** @typedef {{width: number, height: number}} Size */

/** From the thing to the middle of its number, in heights of a number, the nearest first. */
const DISTANCES = [1.2, 1.8, 2.6, 3.6];
/** Upward first, then aside, and down last: below a place stands its name. */
const TURNS = [0, 25, -25, 50, -50, 75, -75, 105, -105, 140, -140, 180].map((turn) => (turn * Math.PI) / 180);
/** What a number costs that lies over words, or whose line crosses another, in heights. */
const OVER_WORDS = 4;
const CROSSING = 2;
/** A little for each turn away from upward, so that of two ways as short the upper one is taken. */
const TURNED = 0.1;
/** Along a line it is looked at whether it passes under a number. */
const STEPS = [0.2, 0.4, 0.6, 0.8];
const APART_PX = 2;

/**
 * Gives each number its place; the first is served first. Null where there is no room near it.
 *
 * @param {readonly Spot[]} spots  what the numbers speak of
 * @param {Size} number  of a number
 * @param {Size} window
 * @param {readonly Area[]} words  names and letters of the drawing
 * @returns {(Spot | null)[]}
 */
export function placesOfMarks(spots, number, window, words) {
  /** @type {{spot: Spot, place: Spot, area: Area}[]} */
  const taken = [];
  return spots.map((spot) => {
    let [best, least] = [/** @type {Spot | null} */ (null), Infinity];
    for (const away of DISTANCES) {
      for (const [order, turn] of TURNS.entries()) {
        const reach = away * number.height;
        const place = { left: spot.left + Math.sin(turn) * reach, top: spot.top - Math.cos(turn) * reach };
        const area = around(place, number);
        if (!isInside(area, window) || isBlocked(spot, place, area, spots, taken)) continue;
        const cost =
          away +
          order * TURNED +
          words.filter((one) => meet(one, area, APART_PX, APART_PX)).length * OVER_WORDS +
          taken.filter((one) => cross(spot, place, one.spot, one.place)).length * CROSSING;
        if (cost < least) [best, least] = [place, cost];
      }
    }
    if (best !== null) taken.push({ spot, place: best, area: around(best, number) });
    return best;
  });
}

/**
 * Whether a number would hide another one, what one speaks of, or a line.
 *
 * @param {Spot} spot
 * @param {Spot} place
 * @param {Area} area
 * @param {readonly Spot[]} spots
 * @param {readonly {spot: Spot, place: Spot, area: Area}[]} taken
 */
function isBlocked(spot, place, area, spots, taken) {
  return (
    spots.some((one) => isIn(area, one.left, one.top)) ||
    taken.some(
      (one) =>
        meet(one.area, area, APART_PX, APART_PX) ||
        passesUnder(one.area, spot, place) ||
        passesUnder(area, one.spot, one.place),
    )
  );
}

/**
 * @param {Spot} place
 * @param {Size} size
 * @returns {Area}
 */
function around({ left, top }, { width, height }) {
  return { left: left - width / 2, right: left + width / 2, top: top - height / 2, bottom: top + height / 2 };
}

/**
 * @param {Area} area
 * @param {Size} window
 */
function isInside({ left, right, top, bottom }, { width, height }) {
  return left >= 0 && top >= 0 && right <= width && bottom <= height;
}

/**
 * Whether the line from a thing to its number passes under an area.
 *
 * @param {Area} area
 * @param {Spot} from
 * @param {Spot} to
 */
function passesUnder(area, from, to) {
  const [across, down] = [to.left - from.left, to.top - from.top];
  return STEPS.some((step) => isIn(area, from.left + step * across, from.top + step * down));
}

/**
 * Whether two lines cross; lines from one and the same spot don't.
 *
 * @param {Spot} a
 * @param {Spot} b
 * @param {Spot} c
 * @param {Spot} d
 */
function cross(a, b, c, d) {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/**
 * @param {Spot} a
 * @param {Spot} b
 * @param {Spot} of
 */
const side = (a, b, of) => (b.left - a.left) * (of.top - a.top) - (b.top - a.top) * (of.left - a.left);
