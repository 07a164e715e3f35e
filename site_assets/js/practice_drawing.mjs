/**
 * Draws a practice vine in a few strokes, with the same classes and `data-` names as the
 * handbook's full drawings. `generator/pencilwood/drawing/for_programs/compact.py` describes what it is given.
 */

import { rowsOfNames, turnOf } from "./name_rows.mjs";
import { frame, trellis } from "./practice_frame.mjs";
import { letterBeside, takenBy } from "./practice_letters.mjs";
import { CONDITIONS, cutPlace, face, marks, oldWood, stretches } from "./practice_wood.mjs";
import { make, place, text } from "./strokes.mjs";

/** @import {Taken} from "./practice_letters.mjs" */
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

export const LEANS = ["up", "out", "in", "down"];

const PLACE_MM = 52;

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
  const taken = takenBy(sheet.pieces.map((piece, number) => stemOf(vine, piece, vine.shapes[number])));
  // Canes first, so that older wood covers their feet.
  for (const kind of ["cane", "old"]) {
    sheet.pieces.forEach((piece, number) => {
      if (piece.kind === kind) wood.append(part(vine, sheet, piece, vine.shapes[number], taken));
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
 * @param {Taken} taken
 */
function part(vine, sheet, piece, shape, taken) {
  const condition = CONDITIONS[shape[0]];
  const group = make("g", {
    class: `pw-part pw-${piece.kind} pw-${condition}`,
    "data-part": piece.name,
    "data-position": sheet.positions[piece.position].name,
    fill: "currentColor",
    "stroke-width": condition === "spindly" ? 1.3 : 2,
  });
  const { points, half } = stemOf(vine, piece, shape);
  if (piece.kind === "cane") {
    for (const stretch of stretches(points, half, shape)) group.append(stretch);
  } else {
    group.append(...oldWood(points, half, shape, !piece.name.includes(" above ")), ...marks(condition, points, half));
  }
  group.append(face(points[0], points[1], half));
  if (!piece.name.includes(" above ")) {
    group.append(letterBeside(piece.name.replace(/^[LR]\d+/, ""), { points, half }, taken));
  }
  return group;
}

/**
 * @param {PackedVine} vine
 * @param {SheetPiece} piece
 * @param {PackedShape} shape
 */
const stemOf = (vine, piece, shape) => ({ points: pointsOf(shape), half: (piece.thickness * vine.thicker) / 2 });

/**
 * From below a place to the corner of its name, which the trunk has pushed aside.
 *
 * @param {number} at
 * @param {number} under
 * @param {number} x
 * @param {number} foot
 */
function leader(at, under, x, foot) {
  const corner = x + Math.sign(at - x) * Math.min(Math.abs(at - x), PLACE_MM / 2);
  const d = `M${place({ x: at, y: under })}L${place({ x: corner, y: foot - PLACE_MM * 0.8 })}`;
  return make("path", { class: "pw-tick", d, fill: "none", "stroke-width": 2.4 });
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
    return { x, text: name, turn: turnOf(at, x) };
  });
  const rows = rowsOfNames(names, PLACE_MM);
  names.forEach(({ x, text: name }, number) => {
    const row = rows[number];
    const named = make("g", { class: "pw-place", "data-position": name, "data-x": sheet.positions[number].x, "data-y": -vine.cordon });
    const [at, foot] = [sheet.positions[number].x, -vine.cordon + thickest + PLACE_MM * (1.05 + row)];
    if (x !== at) named.append(leader(at, thickest - vine.cordon, x, foot));
    named.append(text(name, "pw-place-name", PLACE_MM, x, foot));
    group.append(named);
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
