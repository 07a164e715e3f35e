/** Which piece of wood a finger means, on the whole vine and on the close-up. */

import { CIRCLE_PX, REACH_PX } from "./drawing.mjs";

/** @import {CutPoint, VineDrawing} from "./drawing.mjs" */

/** @typedef {{x: number, y: number}} Place  mm on the drawing */

/**
 * The piece that a place on the whole vine means, and the view that it lies in. It is the nearest
 * piece of the position whose foot is nearest along the arm. Where wood of one position stands
 * before that of another, or lies along the wire past its foot, the nearest piece of all is meant.
 *
 * @param {VineDrawing} drawing
 * @param {Place} at
 * @returns {{piece: number, view: string}}
 */
export function pieceNear(drawing, at) {
  const { sheet, cutPoints, views } = drawing;
  const mixed = views.length > 1 || sheet.cutting.tie !== undefined;
  const here = mixed ? null : positionNear(drawing, at);
  const own = cutPoints.filter(({ piece }) => here === null || sheet.pieces[piece].position === here);
  return nearest(own, at) ?? cutPoints[0];
}

/**
 * @param {VineDrawing} drawing
 * @param {Place} at
 * @returns {number}  the position whose foot is nearest along the arm
 */
function positionNear(drawing, at) {
  let [best, shortest] = [0, Infinity];
  drawing.sheet.positions.forEach((_, number) => {
    const distance = Math.abs((drawing.foot(number)?.x ?? Infinity) - at.x);
    if (distance < shortest) [best, shortest] = [number, distance];
  });
  return best;
}

/**
 * The piece under a finger, or the one with a cut point within its reach; null beside the wood.
 *
 * @param {VineDrawing} drawing
 * @param {number} clientX
 * @param {number} clientY
 * @param {string} view
 * @returns {number | null}
 */
export function pieceAt(drawing, clientX, clientY, view) {
  // The pane with the marks lies over the wood.
  const under = document
    .elementsFromPoint(clientX, clientY)
    .find((one) => drawing.svg.contains(one))
    ?.closest("[data-part], [data-tied]");
  const found = drawing.parts.findIndex((groups, number) => {
    const { name } = drawing.sheet.pieces[number];
    return under != null && (groups.includes(under) || under.getAttribute("data-tied") === name);
  });
  if (found >= 0) return found;
  const at = drawing.toMm(clientX, clientY);
  const point = nearest(drawing.cutPoints.filter((one) => one.view === view), at);
  if (point === null) return null;
  return apart(point, at) * drawing.pixelsPerMm() <= REACH_PX ? point.piece : null;
}

/**
 * Whether a finger is on the ring itself, and not only within its reach.
 *
 * @param {VineDrawing} drawing
 * @param {CutPoint} point
 * @param {number} clientX
 * @param {number} clientY
 */
export function isOnRing(drawing, point, clientX, clientY) {
  return apart(point, drawing.toMm(clientX, clientY)) * drawing.pixelsPerMm() <= CIRCLE_PX;
}

/**
 * @param {readonly CutPoint[]} points
 * @param {Place} at
 */
function nearest(points, at) {
  /** @type {CutPoint | null} */
  let best = null;
  for (const point of points) if (best === null || apart(point, at) < apart(best, at)) best = point;
  return best;
}

/**
 * @param {Place} a
 * @param {Place} b
 */
function apart(a, b) {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
