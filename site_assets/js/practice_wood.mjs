/**
 * The wood of a practice vine, piece by piece: older wood with its bark, canes with their buds, what
 * health looks like, and the face of a cut. Lengths are millimetres, y grows downward; `half` is half
 * the thickness that a piece is drawn with, `widths` are such halves at the places of a stretch.
 */

import { grain, olderWood, smooth } from "./practice_bark.mjs";
import { beside, between, make, place } from "./strokes.mjs";

/** @import {Point} from "./strokes.mjs" */
/** @import {PackedShape} from "./practice_drawing.mjs" */

export const CONDITIONS = ["sound", "spindly", "diseased", "dead", "injured"];

const STUB_SHARE = 0.5;
const MOST_STUB_MM = 20;
const TIP_SHARE = 0.55;
/** How much a cane swells at a bud. */
const SWELLING = 1.24;

/**
 * Older wood: it flares where it grows from the arm, and its upper end is round.
 *
 * @param {Point[]} points
 * @param {number} half
 * @param {PackedShape} shape
 * @param {boolean} flares
 */
export function oldWood(points, half, shape, flares) {
  const long = Math.max(shape[3], 1);
  const halfAt = (/** @type {number} */ share) => half * (1 + (flares ? 0.32 * Math.exp((-share * long) / 16) : 0));
  const shaded = points[2].x >= points[0].x - long * 0.9 ? 1 : -1;
  const { edges: [left, right], bark, shade } = olderWood(points, halfAt, shape[6] + long, shaded);
  const tip = between(left[left.length - 1], right[right.length - 1], 0.5);
  const round = beside(points[1], points[2], tip, 0);
  const cap = { x: round.x + ((points[2].x - points[1].x) / long) * half, y: round.y + ((points[2].y - points[1].y) / long) * half };
  return [
    make("path", { class: "pw-wood", d: `M${smooth([...left.slice(0, -1), between(left[left.length - 1], tip, 0.3), cap, between(right[right.length - 1], tip, 0.3), ...right.slice(0, -1).reverse()])}z` }),
    make("path", { class: "pw-shade", "stroke-width": 4, opacity: 0.4, d: shade }),
    make("path", { class: "pw-bark", fill: "none", "stroke-width": 1.5, d: bark }),
  ];
}

/**
 * The stretches of a cane from bud to bud; number k goes when k buds are left.
 *
 * @param {Point[]} points
 * @param {number} half
 * @param {PackedShape} shape
 */
export function stretches(points, half, shape) {
  const buds = points.length - 2;
  const condition = CONDITIONS[shape[0]];
  const first = grain(shape[6], shape[3]) < 0.5 ? 1 : -1;
  const widthAt = (/** @type {number} */ place) => half * (1 - (1 - TIP_SHARE) * (place / points.length));
  return Array.from({ length: buds }, (_, below) => {
    const group = make("g", { class: "pw-stretch", "data-from-bud": below });
    const start = below === 0 ? points[0] : cutPlace(points, below, shape[5]);
    const last = below === buds - 1;
    const end = last ? points[below + 2] : cutPlace(points, below + 1, shape[5]);
    const along = [start, points[below + 1], end];
    const widths = [0, 0.5, 1].map((more) => widthAt(below + more));
    const side = first * (below % 2 === 0 ? 1 : -1);
    group.append(make("path", { class: "pw-wood", d: caneEdge(along, widths, side, below === 0, last) }), shadeOf(along, widths));
    if (condition !== "injured" || below % 3 === 0) group.append(...marks(condition, along, half));
    group.append(bud(along, below, side, half, condition === "dead"));
    if (below > 0) group.append(face(start, points[below + 1], widthAt(below)));
    return group;
  });
}

/**
 * Both edges of a stretch. The wood swells most under its bud; a cane's foot is round, its tip thin.
 *
 * @param {Point[]} along
 * @param {number[]} widths
 * @param {number} side
 * @param {boolean} isFoot
 * @param {boolean} isTip
 */
function caneEdge([start, node, end], [low, middle, high], side, isFoot, isTip) {
  // It lies a little over the stretch below, so that no line crosses the wood there.
  const foot = isFoot ? start : between(start, node, -1.5 / Math.hypot(node.x - start.x, node.y - start.y));
  const edge = (/** @type {number} */ way) => [
    beside(start, node, foot, way * low * (isFoot ? 0.5 : 1)),
    beside(start, node, between(start, node, isFoot ? 0.14 : 0.4), way * low * 0.97),
    beside(start, node, node, way * middle * (way === side ? SWELLING : 1.04)),
    beside(node, end, end, way * high * (isTip ? 0.7 : 1)),
  ];
  return `M${smooth(edge(-1))}L${smooth(edge(1).reverse())}${isFoot ? "z" : ""}`;
}

/**
 * Where a cane is cut above a bud.
 *
 * @param {Point[]} points
 * @param {number} buds
 * @param {number} internode
 */
export function cutPlace(points, buds, internode) {
  const share = Math.min(MOST_STUB_MM, internode * STUB_SHARE) / internode;
  return between(points[buds], points[buds + 1], share);
}

/**
 * One darker line along the edge away from the light, which comes from the left.
 *
 * @param {Point[]} along
 * @param {number[]} widths
 */
function shadeOf([from, to], [width]) {
  const side = to.y <= from.y ? 1 : -1;
  const [a, b] = [between(from, to, 0.1), between(from, to, 0.9)].map((at) => beside(from, to, at, side * (width - 1.7)));
  return make("path", { class: "pw-shade", "stroke-width": 3.4, opacity: 0.4, d: `M${place(a)}L${place(b)}` });
}

/**
 * A pointed bud; a dead cane has empty sockets.
 *
 * @param {Point[]} along
 * @param {number} below
 * @param {number} side
 * @param {number} half
 * @param {boolean} empty
 */
function bud([before, node], below, side, half, empty) {
  const look = { class: empty ? "pw-bud pw-socket" : "pw-bud", "data-bud": below + 1 };
  const at = beside(before, node, node, side * half * 0.8);
  if (empty) return make("circle", { ...look, cx: at.x, cy: at.y, r: 4.2 });
  const turn = (Math.atan2(node.y - before.y, node.x - before.x) * 180) / Math.PI + 90 + side * 24;
  const d = `M${side * 5} 0q${side * 4} -8 ${side * -5} -17q${side * -6} 8 ${side * -5} 17`;
  return make("path", { ...look, d, transform: `translate(${place(at)})rotate(${Math.round(turn)})` });
}

/**
 * What the wood's health looks like, apart from its colour.
 *
 * @param {string} condition
 * @param {Point[]} along
 * @param {number} half
 */
export function marks(condition, along, half) {
  const middle = between(along[0], along[along.length - 1], 0.5);
  const [first, last] = [along[0], along[along.length - 1]];
  const across = (/** @type {number} */ by) => beside(first, last, middle, by);
  const [a, b] = [across(-half), across(half)];
  if (condition === "diseased") {
    return [make("circle", { class: "pw-sore", cx: middle.x, cy: middle.y, r: half * 0.55 })];
  }
  if (condition === "dead") {
    const lines = [-14, 0, 14].map((up) => `M${a.x} ${a.y + up}L${b.x} ${b.y + up - 8}`).join("");
    return [make("path", { class: "pw-hatch", fill: "none", d: lines })];
  }
  if (condition !== "injured") return [];
  const from = between(first, last, 0.25);
  const to = between(first, last, 0.7);
  const crack = `M${from.x} ${from.y}L${middle.x + half * 0.4} ${middle.y}L${to.x} ${to.y}`;
  return [make("path", { class: "pw-crack", fill: "none", "stroke-width": 3.4, d: crack })];
}

/**
 * The pale face of a cut; it shows when the wood from here on is gone.
 *
 * @param {Point} at
 * @param {Point} toward
 * @param {number} half
 */
export function face(at, toward, half) {
  const turn = (Math.atan2(toward.y - at.y, toward.x - at.x) * 180) / Math.PI + 90;
  return make("ellipse", {
    class: "pw-face",
    cx: at.x,
    cy: at.y,
    rx: Math.max(half, 3),
    ry: Math.max(half * 0.5, 2),
    transform: `rotate(${Math.round(turn)} ${at.x} ${at.y})`,
    display: "none",
  });
}
