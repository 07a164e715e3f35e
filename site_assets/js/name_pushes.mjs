/** Room for a name that has none in its column: outward along its row, past names that make way. */

import { meet } from "./areas.mjs";

const STEP_PX = 1;
/** No further than that, in widths of the name: a longer line is hard to follow. */
const MOST_WIDTHS = 2;

/** @import {Area} from "./areas.mjs" */

/**
 * Where names go so that the one without room has some; null where there is none. Only those further
 * out than it make way, so the names of a row stay in their order and no line crosses another.
 *
 * @param {number} number  of the name without room
 * @param {readonly (Area | null)[]} areas  of all names, null for what is left out
 * @param {(area: Area) => boolean} isTaken  by marks, or beyond the edge
 * @param {readonly number[]} ways  of each: 1 where out is to the right, -1 to the left
 * @param {number} apart  px between two names
 * @returns {(Area | null)[] | null}
 */
export function pushOut(number, areas, isTaken, ways, apart) {
  const own = areas[number];
  if (own === null) return null;
  const way = ways[number];
  const isInner = (/** @type {Area} */ one) => (one.left - own.left) * way < 0;
  for (let px = 0; px <= MOST_WIDTHS * (own.right - own.left); px += STEP_PX) {
    const moved = { ...own, left: own.left + way * px, right: own.right + way * px };
    if (isTaken(moved)) continue;
    const inWay = areas.flatMap((one, other) =>
      other !== number && one !== null && meet(one, moved, apart) ? [{ one, other }] : [],
    );
    if (inWay.some(({ one, other }) => ways[other] !== way || isInner(one))) continue;
    /** @type {(Area | null)[] | null} */
    let all = areas.map((one, other) => (other === number ? moved : one));
    for (const { other } of inWay) all = all && pushOut(other, all, isTaken, ways, apart);
    if (all !== null) return all;
  }
  return null;
}
