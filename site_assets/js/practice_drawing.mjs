/**
 * Draws a practice vine in a few strokes, with the same classes and `data-` names as the
 * handbook's full drawings. `generator/pencilwood/drawing/for_programs/compact.py` describes what it is given.
 */

import { rowsOfNames } from "./name_rows.mjs";
import { frame, trellis } from "./practice_frame.mjs";
import { beside, between, make, outline, text } from "./strokes.mjs";

/** @import {Point} from "./strokes.mjs" */
/** @import {Sheet, SheetPiece} from "./types.mjs" */

/**
 * @typedef {[condition: number, lean: number, age: number, length: number, height: number,
 *   internode: number, cutX: number, cutY: number, points: number[]]} PackedShape
 *
 * @typedef {object} PackedVine
 * @property {[number, number, number, number]} box
 * @property {number} cordon
 * @property {number} trunk
 * @property {number} thicker
 * @property {[number, number][]} arms
 * @property {number[]} wires
 * @property {number} trimming
 * @property {PackedShape[]} shapes
 */

export const CONDITIONS = ["sound", "spindly", "diseased", "dead", "injured"];
export const LEANS = ["up", "out", "in", "down"];

const LETTER_MM = 30;
const PLACE_MM = 52;
const STUB_SHARE = 0.5;
const MOST_STUB_MM = 20;
const TIP_SHARE = 0.55;
/** How much a cane swells at a bud. */
const SWELLING = 1.18;

/**
 * @param {PackedVine} vine
 * @param {Sheet} sheet
 * @param {{language: string, label: string}} words
 * @returns {SVGSVGElement}
 */
export function drawVine(vine, sheet, words) {
  const svg = make("svg", {
    class: "pw-vine pw-vine-plain",
    viewBox: vine.box.join(" "),
    role: "img",
    "aria-label": words.label,
    lang: words.language,
    "stroke-linecap": "round",
    "stroke-linejoin": "round",
  });
  const [left, top, width, height] = vine.box;
  svg.append(make("rect", { class: "pw-paper", x: left, y: top, width, height }));
  svg.append(trellis(vine), frame(vine));
  const wood = make("g", { class: "pw-wood-all" });
  // Canes first, so that older wood covers their feet.
  for (const kind of ["cane", "old"]) {
    sheet.pieces.forEach((piece, number) => {
      if (piece.kind === kind) wood.append(part(vine, sheet, piece, vine.shapes[number]));
    });
  }
  svg.append(wood, places(vine, sheet), cutPoints(vine, sheet));
  return svg;
}

/**
 * @param {PackedVine} vine
 * @param {Sheet} sheet
 * @param {SheetPiece} piece
 * @param {PackedShape} shape
 */
function part(vine, sheet, piece, shape) {
  const condition = CONDITIONS[shape[0]];
  const group = make("g", {
    class: `pw-part pw-${piece.kind} pw-${condition}`,
    "data-part": piece.name,
    "data-position": sheet.positions[piece.position].name,
    fill: "currentColor",
    "stroke-width": condition === "spindly" ? 1.3 : 2,
  });
  const points = pointsOf(shape);
  const half = (piece.thickness * vine.thicker) / 2;
  if (piece.kind === "cane") {
    for (const stretch of stretches(points, half, shape)) group.append(stretch);
  } else {
    const edge = outline(points, points.map(() => half));
    group.append(make("path", { class: "pw-wood", d: edge }), ...marks(condition, points, half));
  }
  group.append(face(points[0], points[1], half));
  if (!piece.name.includes(" above ")) group.append(letter(piece.name, points, half));
  return group;
}

/**
 * The stretches of a cane from bud to bud; number k goes when k buds are left.
 *
 * @param {Point[]} points
 * @param {number} half
 * @param {PackedShape} shape
 */
function stretches(points, half, shape) {
  const buds = points.length - 2;
  const condition = CONDITIONS[shape[0]];
  const widthAt = (/** @type {number} */ place) => half * (1 - (1 - TIP_SHARE) * (place / points.length));
  return Array.from({ length: buds }, (_, below) => {
    const group = make("g", { class: "pw-stretch", "data-from-bud": below });
    const start = below === 0 ? points[0] : cutPlace(points, below, shape[5]);
    const last = below === buds - 1;
    const end = last ? points[below + 2] : cutPlace(points, below + 1, shape[5]);
    const along = [start, points[below + 1], end];
    const widths = along.map((_at, number) => widthAt(below + number / 2) * (number === 1 ? SWELLING : 1));
    group.append(make("path", { class: "pw-wood", d: outline(along, widths) }), shadeOf(along, widths));
    if (condition !== "injured" || below % 3 === 0) group.append(...marks(condition, along, half));
    group.append(bud(along, below, half, condition === "dead"));
    if (below > 0) group.append(face(start, points[below + 1], widthAt(below)));
    return group;
  });
}

/**
 * Where a cane is cut above a bud.
 *
 * @param {Point[]} points
 * @param {number} buds
 * @param {number} internode
 */
function cutPlace(points, buds, internode) {
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
  const d = `M${a.x.toFixed(1)} ${a.y.toFixed(1)}L${b.x.toFixed(1)} ${b.y.toFixed(1)}`;
  return make("path", { class: "pw-shade", "stroke-width": 3.4, opacity: 0.4, d });
}

/**
 * A pointed bud; a dead cane has empty sockets.
 *
 * @param {Point[]} along
 * @param {number} below
 * @param {number} half
 * @param {boolean} empty
 */
function bud([before, node], below, half, empty) {
  const side = below % 2 === 0 ? 1 : -1;
  const look = { class: empty ? "pw-bud pw-socket" : "pw-bud", "data-bud": below + 1 };
  const { x, y } = beside(before, node, node, side * half * 0.8);
  if (empty) return make("circle", { ...look, cx: x, cy: y, r: 4.2 });
  const turn = (Math.atan2(node.y - before.y, node.x - before.x) * 180) / Math.PI + 90 + side * 24;
  const d = `M${side * 5} 0q${side * 4} -8 ${side * -5} -17q${side * -6} 8 ${side * -5} 17`;
  return make("path", { ...look, d, transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})rotate(${Math.round(turn)})` });
}

/**
 * What the wood's health looks like, apart from its colour.
 *
 * @param {string} condition
 * @param {Point[]} along
 * @param {number} half
 */
function marks(condition, along, half) {
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
function face(at, toward, half) {
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

/**
 * @param {string} name
 * @param {Point[]} points
 * @param {number} half
 */
function letter(name, points, half) {
  const near = between(points[0], points[1], points.length > 3 ? 0.55 : 0.7);
  const { x, y } = beside(points[0], points[1], near, half + LETTER_MM * 0.5);
  // Beside short wood that stands up, not over what bears it.
  const middle = points[1].y < points[0].y ? Math.min(y, points[0].y - LETTER_MM * 0.5) : y;
  return text(name.replace(/^[LR]\d+/, ""), "pw-letter", LETTER_MM, x, middle + LETTER_MM * 0.3);
}

/**
 * @param {PackedVine} vine
 * @param {Sheet} sheet
 */
function places(vine, sheet) {
  const group = make("g", { class: "pw-places" });
  const thickest = Math.max(...vine.arms.map(([, thickness]) => thickness)) * vine.thicker;
  const clear = (vine.trunk * vine.thicker) / 2 + PLACE_MM;
  const names = sheet.positions.map(({ name, x: at }) => {
    const x = Math.abs(at) < clear ? Math.sign(at || 1) * clear : at;
    return { x, text: name, fromHead: Math.abs(at) };
  });
  const rows = rowsOfNames(names, PLACE_MM);
  names.forEach(({ x, text: name }, number) => {
    const row = rows[number];
    const place = make("g", { class: "pw-place", "data-position": name, "data-x": sheet.positions[number].x });
    place.append(text(name, "pw-place-name", PLACE_MM, x, -vine.cordon + thickest + PLACE_MM * (1.05 + row)));
    group.append(place);
  });
  return group;
}

/**
 * @param {PackedVine} vine
 * @param {Sheet} sheet
 */
function cutPoints(vine, sheet) {
  const group = make("g", { class: "pw-cutpoints" });
  sheet.pieces.forEach((piece, number) => {
    const shape = vine.shapes[number];
    const circle = { class: "pw-cutpoint", "data-cut": piece.name, "fill-opacity": 0, r: 12 };
    group.append(make("circle", { ...circle, cx: shape[6], cy: shape[7] }));
    if (piece.kind === "old") return;
    const points = pointsOf(shape);
    for (let buds = 1; buds < points.length - 2; buds += 1) {
      const { x, y } = cutPlace(points, buds, shape[5]);
      const at = { cx: Math.round(x), cy: Math.round(y) };
      group.append(make("circle", { ...circle, ...at, "data-buds": buds }));
    }
  });
  return group;
}

/** @param {PackedShape} shape */
function pointsOf(shape) {
  const numbers = shape[8];
  /** @type {Point[]} */
  const points = [];
  let [x, y] = [0, 0];
  for (let at = 0; at < numbers.length; at += 2) {
    [x, y] = [x + numbers[at], y + numbers[at + 1]];
    points.push({ x, y });
  }
  return points;
}
