/** Lines to names of places that moved on a small picture, in the place of those that were drawn or after them. */

import { isIn } from "./areas.mjs";
import { letterPx } from "./drawn_names.mjs";
import { NAME_WIDTH } from "./name_rows.mjs";
import { make } from "./strokes.mjs";

const LINE = "pw-tick-on";
const DRAWN_LINES = `:is(.pw-halo, .pw-tick):not(.${LINE})`;
/** Where the line to a moved name may end, in shares of its width from its middle, best first. */
const LINE_ENDS = [0, 0.25, -0.25, 0.5, -0.5];
/** A line from aside ends just above its name, over those on its way; in heights of a letter. */
const CORNER = 1;
/** Along such a line it is looked at whether something stands in its way. */
const STEPS = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

/** @import {Area} from "./areas.mjs" */

/**
 * Moves a name aside, with one line from its place in the place of the line that was drawn.
 *
 * @param {SVGElement} name
 * @param {number} aside  px to the right
 * @param {number} move  px down
 * @param {number} pixelsPerMm
 */
export function pushAside(name, aside, move, pixelsPerMm) {
  const [across, down] = [aside / pixelsPerMm, move / pixelsPerMm];
  name.style.transform = `translate(${across.toFixed(1)}px, ${down.toFixed(1)}px)`;
  const drawn = /** @type {SVGPathElement[]} */ ([...(name.parentNode?.querySelectorAll(DRAWN_LINES) ?? [])]);
  if (drawn.length === 0) return;
  // Around a head lines are drawn from the name, along an arm from the place.
  const middle = Number(name.getAttribute("x"));
  const ends = [drawn[0].getPointAtLength(0), drawn[0].getPointAtLength(drawn[0].getTotalLength())];
  const [from] = ends.sort((one, other) => Math.abs(other.x - middle) - Math.abs(one.x - middle));
  const [x, y] = [Number(name.getAttribute("x")) + across, Number(name.getAttribute("y")) + down];
  const letter = letterPx(pixelsPerMm) / pixelsPerMm;
  const half = (NAME_WIDTH * letter * (name.textContent ?? "").length) / 2;
  const end = x + Math.sign(from.x - x) * Math.min(Math.abs(from.x - x), half);
  const d = `M${from.x.toFixed(1)} ${from.y.toFixed(1)}L${end.toFixed(1)} ${(y - CORNER * letter).toFixed(1)}`;
  for (const one of drawn) {
    const moved = /** @type {SVGPathElement} */ (one.cloneNode());
    moved.setAttribute("d", d);
    moved.classList.add(LINE);
    one.setAttribute("visibility", "hidden");
    name.before(moved);
  }
}

/**
 * Draws the line from the wood on to a name that has moved away from it, unless names or marks
 * leave it no way.
 *
 * @param {SVGElement} name
 * @param {number} lower  px that it stands lower than drawn before it moved
 * @param {Area} area  of the name then
 * @param {number} move  px down
 * @param {readonly Area[]} others
 * @param {number} pixelsPerMm
 */
export function lineTo(name, lower, area, move, others, pixelsPerMm) {
  const aside = asideOf(area, move, others);
  if (aside === null) return;
  const [x, foot] = [name.getAttribute("x"), Number(name.getAttribute("y")) + lower / pixelsPerMm];
  const from = move > 0 ? foot - (area.bottom - area.top) / pixelsPerMm : foot;
  const [across, down] = [aside, move].map((px) => (px / pixelsPerMm).toFixed(1));
  const d = `M${x} ${from.toFixed(1)}l${across} ${down}`;
  name.before(make("path", { class: `pw-tick ${LINE}`, d, fill: "none", "stroke-width": 2.4 }));
}

/**
 * How far from the middle of a moved name the line to it ends, px: there where it crosses nothing.
 *
 * @param {Area} area  of the name before it moved
 * @param {number} move  px down
 * @param {readonly Area[]} others
 * @returns {number | null}
 */
export function asideOf({ left, right, top, bottom }, move, others) {
  const [x, y, wide] = [(left + right) / 2, move > 0 ? top : bottom, right - left];
  const asides = LINE_ENDS.map((share) => share * wide);
  const isClear = (/** @type {number} */ aside) =>
    STEPS.every((step) => !others.some((one) => isIn(one, x + step * aside, y + step * move)));
  return asides.find(isClear) ?? null;
}

/** @param {SVGSVGElement} svg */
export function takeLinesOff(svg) {
  for (const one of svg.querySelectorAll(":is(.pw-tick, .pw-halo)[visibility]")) one.removeAttribute("visibility");
  for (const line of svg.querySelectorAll(`.${LINE}`)) line.remove();
}
