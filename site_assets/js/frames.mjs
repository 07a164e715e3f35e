/** Which window of a drawing shows one position well. */

/** @import {Box, VineDrawing} from "./drawing.mjs" */

const MARGIN_MM = 70;
const TIP_ROOM_MM = 30;
const SMALLEST_MM = 260;
const LOW_BUDS = 2;
const TRUNK_MM = 300;
/** A cane goes on above its highest bud; a hanging one ends below, where the trunk leaves room. */
const TIP_MM = 130;

/**
 * A window around what is left at a position: the whole canes, or only their lowest buds.
 *
 * @param {VineDrawing} drawing
 * @param {number} position
 * @param {readonly number[]} states
 * @param {boolean} closer
 * @param {string} [view]
 * @returns {Box}
 */
export function frameOf(drawing, position, states, closer, view = drawing.views[0]) {
  const { sheet } = drawing;
  const here = drawing.cutPoints.filter(
    (point) => point.view === view && sheet.pieces[point.piece].position === position,
  );
  const kept = here.filter(
    ({ piece, buds }) =>
      states[piece] > 0 && (buds ?? 0) <= (closer ? LOW_BUDS : states[piece]),
  );
  const foot = drawing.foot(position, view);
  const points = foot === null ? kept : [...kept, foot];
  return points.length === 0 ? drawing.whole : around(points);
}

/**
 * A window around all wood that can be cut, with some of the trunk: more of it would only make
 * everything smaller. Where the drawing says how far trunk and arms go, they are seen to their ends.
 *
 * @param {VineDrawing} drawing
 * @returns {Box}
 */
export function frameOfWood({ cutPoints, whole, svg }) {
  if (cutPoints.length === 0) return whole;
  const { x, y, width, height } = around(cutPoints);
  const top = Math.max(y - TIP_MM, whole.y);
  const bottom = Math.min(y + height + TRUNK_MM, whole.y + whole.height);
  const ends = svg.querySelector(".pw-frame")?.getAttribute("data-ends")?.split(" ") ?? [];
  return reaching({ x, y: top, width, height: bottom - top }, ends.map((end) => ({ x: Number(end), y })));
}

/**
 * The same window made wide enough for tips that reach out of it.
 *
 * @param {Box} box
 * @param {readonly {x: number, y: number}[]} tips
 * @returns {Box}
 */
export function reaching(box, tips) {
  const left = Math.min(box.x, ...tips.map(({ x }) => x - TIP_ROOM_MM));
  const right = Math.max(box.x + box.width, ...tips.map(({ x }) => x + TIP_ROOM_MM));
  return { ...box, x: left, width: right - left };
}

/**
 * @param {readonly {x: number, y: number}[]} points
 * @returns {Box}
 */
function around(points) {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const across = widened(Math.min(...xs), Math.max(...xs));
  const upright = widened(Math.min(...ys), Math.max(...ys));
  return { x: across.from, y: upright.from, width: across.size, height: upright.size };
}

/**
 * @param {number} from
 * @param {number} to
 */
function widened(from, to) {
  const size = Math.max(SMALLEST_MM, to - from + 2 * MARGIN_MM);
  return { from: (from + to - size) / 2, size };
}
