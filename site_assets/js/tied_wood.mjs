/** Draws the canes that are tied: each is laid along the wire, joined to its foot by a bend. */

import { canesToTie } from "./tying.mjs";

/** @import {VineDrawing} from "./drawing.mjs" */
/** @import {WireSide} from "./types.mjs" */

const SVG = "http://www.w3.org/2000/svg";
const BEND_MM = 70;
/** Room between a tip and the words beside it; more than a window has, which so cuts no word. */
const CLEAR_MM = 40;

/** @typedef {{x: number, y: number}} Point  mm */

/**
 * Shows these canes as tied, and no others. The wood itself is copied and turned about its foot,
 * so that every bud stays in sight; the standing cane is hidden.
 *
 * @param {VineDrawing} drawing
 * @param {Map<string, WireSide>} tied  side of the wire by the cane's name
 * @param {readonly number[]} states
 * @returns {Point[]}  the tips of these canes
 */
export function showTied(drawing, tied, states) {
  for (const old of drawing.svg.querySelectorAll(".pw-tied-now")) old.remove();
  for (const group of drawing.svg.querySelectorAll(".pw-tied-away")) {
    group.classList.remove("pw-tied-away");
  }
  const wire = Number(drawing.svg.dataset.wire);
  if (!(wire > 0)) return [];
  const tips = canesToTie(drawing.sheet, states).flatMap((number) => {
    const side = tied.get(drawing.sheet.pieces[number].name);
    return side === undefined ? [] : layDown(drawing, number, states[number], side, -wire);
  });
  keepClear(drawing, tips);
  return tips;
}

/**
 * Moves the words about the wires off the canes that are tied to one of them.
 *
 * @param {VineDrawing} drawing
 * @param {readonly Point[]} tips
 */
function keepClear(drawing, tips) {
  const right = Math.max(...tips.map(({ x }) => x)) + CLEAR_MM;
  for (const words of drawing.svg.querySelectorAll(".pw-wire-name, .pw-wire-height")) {
    const own = words.getAttribute("data-x") ?? words.getAttribute("x") ?? "0";
    words.setAttribute("data-x", own);
    words.setAttribute("x", `${Math.max(Number(own), right)}`);
  }
}

/**
 * @param {VineDrawing} drawing
 * @param {number} number  of the piece
 * @param {number} state  its buds
 * @param {WireSide} side
 * @param {number} wireY
 * @returns {Point[]}  its tip
 */
function layDown(drawing, number, state, side, wireY) {
  const { name, thickness } = drawing.sheet.pieces[number];
  const own = drawing.cutPoints.filter(({ piece }) => piece === number);
  const foot = own.find(({ buds }) => buds === null);
  const far = own.filter(({ buds }) => buds !== null && buds <= state).at(-1);
  if (foot === undefined || far === undefined) return [];
  const outward = side === "left" ? -1 : 1;
  const now = Math.atan2(far.y - foot.y, far.x - foot.x);
  const start = { x: foot.x + outward * BEND_MM, y: wireY };
  const long = Math.hypot(far.x - foot.x, far.y - foot.y);
  const along = Math.max(long - bendLength(foot, start), long / 2);
  // The bend is wood of the cane too: what lies is shorter by it, and so reaches as far as it would.
  const laidDown = [
    `translate(${start.x} ${start.y})`,
    `rotate(${side === "left" ? 180 : 0})`,
    `scale(${(along / long).toFixed(3)} 1)`,
    `rotate(${((-now * 180) / Math.PI).toFixed(2)})`,
    `translate(${-foot.x} ${-foot.y})`,
  ].join(" ");
  for (const group of drawing.parts[number]) {
    const laid = /** @type {Element} */ (group.cloneNode(true));
    for (const one of [laid, ...laid.querySelectorAll("[id]")]) one.removeAttribute("id");
    for (const letter of laid.querySelectorAll(".pw-letter")) letter.remove();
    laid.removeAttribute("data-part");
    // It can be chosen where it lies.
    laid.setAttribute("data-tied", name);
    laid.classList.add("pw-tied-now");
    const bend = /** @type {Element} */ (laid.cloneNode(false));
    bend.classList.add("pw-bend");
    bend.append(...bendOf(foot, start, thickness));
    laid.setAttribute("transform", laidDown);
    group.after(bend, laid);
    group.classList.add("pw-tied-away");
  }
  return [{ x: start.x + outward * along, y: wireY }];
}

/**
 * About how much of a cane the bend takes: between its chord and the way round its corner.
 *
 * @param {Point} foot
 * @param {Point} start
 */
function bendLength(foot, start) {
  const across = Math.abs(start.x - foot.x);
  const up = Math.abs(start.y - foot.y);
  return (Math.hypot(across, up) + across + up) / 2;
}

/**
 * The wood between foot and wire, its edge first and then the wood itself.
 *
 * @param {{x: number, y: number}} foot
 * @param {{x: number, y: number}} start
 * @param {number} thickness  mm; wood is drawn twice as thick as it is
 * @returns {SVGPathElement[]}
 */
function bendOf(foot, start, thickness) {
  return [2, -1.5].map((more) => {
    const bend = document.createElementNS(SVG, "path");
    bend.setAttribute("d", `M${foot.x} ${foot.y}Q${foot.x} ${start.y} ${start.x} ${start.y}`);
    bend.setAttribute("fill", "none");
    if (more < 0) bend.setAttribute("stroke", "currentColor");
    bend.setAttribute("stroke-width", `${1.9 * thickness + more}`);
    bend.setAttribute("stroke-linecap", "round");
    return bend;
  });
}
