/** Where names of places were drawn, and where the mark of the place in hand goes so that it stands in their order. */

import { NAME_WIDTH } from "./name_rows.mjs";
import { viewsOf } from "./views.mjs";

/** The least height of the letters of a name, on the screen and as drawn. */
const LEAST_PX = 12;
const DRAWN_MM = 52;
/** Between two names of a row. */
export const APART_PX = 5;
const CAPITAL_SHARE = 0.7;
/** A name that is less aside stands straight below its place. */
const BELOW_MM = 1;
/** So far below its place the mark begins, in parts of its own height; marks.css gives it. */
const MARK_BELOW = 0.6;
const MARK_EDGE_PX = 2;

/** @param {number} pixelsPerMm */
export const letterPx = (pixelsPerMm) => Math.max(LEAST_PX, DRAWN_MM * pixelsPerMm);

/**
 * How much lower letters stand that are larger than drawn, so that they begin where they were drawn
 * to: no line ends in them then.
 *
 * @param {number} pixelsPerMm
 */
export const lowerPx = (pixelsPerMm) => CAPITAL_SHARE * (letterPx(pixelsPerMm) - DRAWN_MM * pixelsPerMm);

/**
 * Names in one row, from the middle outward, each as far out as the one before it asks.
 *
 * @param {readonly {middle: number, half: number}[]} names  px
 * @returns {number[]}  how far each goes to the right
 */
export function asidesInRow(names) {
  const asides = names.map(() => 0);
  for (const way of [1, -1]) {
    let edge = -Infinity;
    const order = names.flatMap(({ middle }, number) => (middle * way > 0 ? [number] : []));
    order.sort((one, other) => (names[one].middle - names[other].middle) * way);
    for (const number of order) {
      const { middle, half } = names[number];
      const out = Math.max(middle * way, edge + half);
      asides[number] = out * way - middle;
      edge = out + half + APART_PX;
    }
  }
  return asides;
}

/**
 * How far the names beside a head go to the right, px, so that all stand in their row.
 *
 * @param {SVGSVGElement} svg
 * @param {number} pixelsPerMm
 * @param {readonly HTMLElement[]} marks  of places
 * @returns {Map<string, number>}
 */
export function asidesBesideHead(svg, pixelsPerMm, marks) {
  const names = [...svg.querySelectorAll(".pw-place:has(> .pw-halo) > .pw-place-name")];
  const wide = new Map(marks.map((one) => [one.textContent ?? "", one.getBoundingClientRect().width]));
  const asides = asidesInRow(
    names.map((name) => {
      const text = name.textContent ?? "";
      const half = (wide.get(text) ?? text.length * NAME_WIDTH * letterPx(pixelsPerMm)) / 2;
      return { middle: Number(name.getAttribute("x")) * pixelsPerMm, half };
    }),
  );
  return new Map(names.map((name, number) => [name.textContent ?? "", asides[number]]));
}

/**
 * Leads the mark of a place whose name stands aside of it to where that name stands. What tells its
 * place stays there, and so does the line from it.
 *
 * @param {SVGSVGElement} svg
 * @param {number} pixelsPerMm
 * @param {readonly HTMLElement[]} marks
 */
export function marksAtNames(svg, pixelsPerMm, marks) {
  if (pixelsPerMm === 0 || viewsOf(svg) > 1) return;
  const row = asidesBesideHead(svg, pixelsPerMm, marks);
  for (const mark of marks) {
    const name = [...svg.querySelectorAll(".pw-place-name")].find((one) => one.textContent === mark.textContent);
    const place = name?.closest("[data-x]");
    if (!name || !place) continue;
    const across = Number(name.getAttribute("x")) - Number(place.getAttribute("data-x"));
    const under = Number(name.getAttribute("y")) - Number(place.getAttribute("data-y"));
    if (under < 0 || Math.abs(across) < BELOW_MM) continue;
    const high = mark.getBoundingClientRect().height;
    const foot = under * pixelsPerMm + lowerPx(pixelsPerMm);
    const top = foot - CAPITAL_SHARE * letterPx(pixelsPerMm);
    const beside = row.get(mark.textContent ?? "");
    // Beside a head there is room above the row.
    const markTop = beside === undefined ? top - MARK_EDGE_PX : (top + foot - high) / 2;
    const below = markTop - MARK_BELOW * high;
    const down = beside === undefined ? Math.max(0, below) : below;
    mark.style.setProperty("--pw-aside", `${(across * pixelsPerMm + (beside ?? 0)).toFixed(1)}px`);
    mark.style.setProperty("--pw-down", `${down.toFixed(1)}px`);
    name.classList.add("pw-name-told");
  }
}
