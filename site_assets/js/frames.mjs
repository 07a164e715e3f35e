/** Which window of a drawing shows one position well. */

/** @import {Box, VineDrawing} from "./drawing.mjs" */

const MARGIN_MM = 70;
const TIP_ROOM_MM = 30;
const SMALLEST_MM = 260;
const LOW_BUDS = 2;
const TRUNK_MM = 300;
/** A cane goes on above its highest bud; a hanging one ends below, where the trunk leaves room. */
const TIP_MM = 130;
/** The narrowest phone makes captions so large; below their last line is the tail of a letter. */
const LARGEST_CAPTION_MM = 95;
const CAPTION_TAIL = 0.35;
/** Of a caption, compared with its height. */
const LETTER_WIDTH = 0.47;
const CAPTION_ROOM_MM = 8;

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
 * everything smaller. Trunk and arms are seen to the ends that the drawing tells, and all captions.
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
  const tips = ends.map((end) => ({ x: Number(end), y }));
  return withCaptions(reaching({ x, y: top, width, height: bottom - top }, tips), svg);
}

/**
 * The same window made to hold all that is written below the views of a drawing.
 *
 * @param {Box} box
 * @param {Element} svg
 * @returns {Box}
 */
function withCaptions(box, svg) {
  const corners = [...svg.querySelectorAll(".pw-caption")].flatMap(cornersOfCaption);
  const low = Math.max(box.y + box.height, ...corners.map(({ y }) => y));
  return reaching({ ...box, height: low - box.y }, corners);
}

/**
 * The lower corners of a caption where a small screen makes it large.
 *
 * @param {Element} caption
 */
function cornersOfCaption(caption) {
  const [x, y, rows] = ["x", "y", "dy"].map((name) => Number.parseFloat(caption.getAttribute(name) ?? "0"));
  const long = (caption.textContent ?? "").length * LETTER_WIDTH * LARGEST_CAPTION_MM;
  // A tip would get more room.
  const half = long / 2 + CAPTION_ROOM_MM - TIP_ROOM_MM;
  const low = y + (rows + CAPTION_TAIL) * LARGEST_CAPTION_MM;
  return [{ x: x - half, y: low }, { x: x + half, y: low }];
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
