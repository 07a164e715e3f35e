/** Names of places beside wood that hangs below an arm, and beside the trunk, rather than on it. */

import { isIn, meet } from "./areas.mjs";
import { APART_PX } from "./drawn_names.mjs";

/** Between a name and the middle of a cane. */
const CLEAR_OF_CANE_PX = 3;
/** Between a name and the edge of the trunk. */
const CLEAR_OF_TRUNK_PX = 2;
/** Two buds are apart by less than so many steps. */
const STEPS = 12;
const STEP_PX = 1;
/** Further aside, in widths of the name, it would seem to name another place. */
const MOST_WIDTHS = 1.2;

/** @import {Area} from "./areas.mjs" */

/**
 * Tells of an area on the screen whether wood lies in it, of all that a cut leads to or that stands.
 *
 * @param {SVGSVGElement} svg
 * @returns {(area: Area) => boolean}
 */
export function woodOf(svg) {
  const matrix = svg.getScreenCTM();
  if (matrix === null) return () => false;
  const canes = alongCanes(svg).map(([x, y]) => new DOMPoint(x, y).matrixTransform(matrix));
  const back = matrix.inverse();
  const frame = [...svg.querySelectorAll(".pw-frame-wood")].map((one) => /** @type {SVGGeometryElement} */ (one));
  const inFrame = (/** @type {number} */ x, /** @type {number} */ y) => {
    const at = new DOMPoint(x, y).matrixTransform(back);
    return frame.some((one) => one.isPointInFill(at));
  };
  return (area) => {
    const around = wider(area, CLEAR_OF_CANE_PX);
    if (canes.some(({ x, y }) => isIn(around, x, y))) return true;
    const { left, right, top, bottom } = wider(area, CLEAR_OF_TRUNK_PX);
    return [left, right].some((x) => [area.top, (top + bottom) / 2, bottom].some((y) => inFrame(x, y)));
  };
}

/**
 * How far a name goes aside to be clear of wood, px to the right: as little as it can, and rather
 * outward; where that is so over another name alone, too; 0 where it is clear nowhere near.
 *
 * @param {Area} area
 * @param {(area: Area) => boolean} isOn
 * @param {number} way  1 where out is to the right, -1 to the left
 * @param {readonly Area[]} others  other names
 */
export function asideOffWood(area, isOn, way, others) {
  if (!isOn(area)) return 0;
  const isOnAny = (/** @type {Area} */ at) => others.some((one) => meet(one, at, APART_PX)) || isOn(at);
  return nearest(area, isOnAny, way) ?? nearest(area, isOn, way) ?? 0;
}

/**
 * @param {Area} area
 * @param {(area: Area) => boolean} isOn
 * @param {number} way
 * @returns {number | undefined}
 */
function nearest(area, isOn, way) {
  const most = MOST_WIDTHS * (area.right - area.left);
  for (let px = 0; px <= most; px += STEP_PX) {
    const aside = [way * px, -way * px].find(
      (one) => !isOn({ ...area, left: area.left + one, right: area.right + one }),
    );
    if (aside !== undefined) return aside;
  }
  return undefined;
}

/**
 * Places along all canes, from one where they can be cut to the next, mm.
 *
 * @param {SVGSVGElement} svg
 * @returns {[x: number, y: number][]}
 */
function alongCanes(svg) {
  const circles = [...svg.querySelectorAll("circle[data-cut]")];
  return circles.flatMap((circle, number) => {
    const before = circles[number - 1];
    const [x, y] = [Number(circle.getAttribute("cx")), Number(circle.getAttribute("cy"))];
    if (before?.getAttribute("data-cut") !== circle.getAttribute("data-cut")) return [[x, y]];
    const [fromX, fromY] = [Number(before.getAttribute("cx")), Number(before.getAttribute("cy"))];
    return Array.from({ length: STEPS }, (_, step) => {
      const share = (step + 1) / STEPS;
      return [fromX + (x - fromX) * share, fromY + (y - fromY) * share];
    });
  });
}

/**
 * @param {Area} area
 * @param {number} px
 * @returns {Area}
 */
const wider = ({ left, right, top, bottom }, px) => ({
  left: left - px,
  right: right + px,
  top: top - px,
  bottom: bottom + px,
});
