/**
 * What stands around the wood of a practice vine: wires and ground, trunk and arms, with bark and
 * one dark edge, as in the handbook's full drawings. Lengths are millimetres, x grows to the right of
 * the trunk, y downward from the ground; `half` is half the thickness of the trunk as it is drawn.
 */

import { olderWood, smooth } from "./practice_bark.mjs";
import { make, place } from "./strokes.mjs";

/** @import {PackedVine} from "./practice_drawing.mjs" */

/** A close-up at the end of an arm shows the wires going on. */
const BEYOND_MM = 600;
/** How far the bend from the trunk into an arm is rounded. */
const KNEE_MM = 80;
/** How far a trunk sways from side to side on its way up, and how much wider it is at the ground. */
const SWAY = 0.07;
const FLARE = 0.45;
const TIP_SHARE = 0.6;

/** @param {PackedVine} vine */
export function trellis(vine) {
  const group = make("g", { class: "pw-trellis" });
  const level = (/** @type {number} */ height) =>
    `M${vine.box[0] - BEYOND_MM} ${-height}h${vine.box[2] + 2 * BEYOND_MM}`;
  const line = { fill: "none", "stroke-width": 2.6 };
  // A wire is a thin double line.
  const wires = [vine.cordon, ...vine.wires].map((height) => level(height - 1.4) + level(height + 1.4));
  group.append(
    make("path", { ...line, class: "pw-trellis-wire", "stroke-width": 1.7, d: wires.join("") }),
    make("path", { ...line, class: "pw-trimming", "stroke-dasharray": "4 16", d: level(vine.trimming) }),
    make("path", { ...line, class: "pw-ground", "stroke-width": 3.4, d: level(0) }),
  );
  return group;
}

/** @param {PackedVine} vine */
export function frame(vine) {
  const half = (vine.trunk * vine.thicker) / 2;
  const wood = [trunk(vine, half), ...vine.arms.map(([tip, thickness], number) => arm(vine, half, tip, thickness * vine.thicker, number))];
  const group = make("g", { class: "pw-frame", "data-ends": endsOf(vine).join(" ") });
  const all = (/** @type {"bark" | "shade"} */ what) => wood.map((one) => one[what]).join("");
  // All lines first: those inside the body are painted over.
  group.append(
    ...wood.map(({ d }) => make("path", { class: "pw-frame-line", "stroke-width": 4.4, d })),
    ...wood.map(({ d }) => make("path", { class: "pw-frame-wood", stroke: "none", d })),
    make("path", { class: "pw-wash", fill: "none", stroke: "#000", "stroke-width": 11, "stroke-opacity": 0.25, d: all("shade") }),
    make("path", { class: "pw-bark", fill: "none", "stroke-width": 1.6, d: all("bark") }),
  );
  return group;
}

/**
 * From where to where trunk and arms go; the handbook's full drawings tell the same.
 *
 * @param {Pick<PackedVine, "trunk" | "thicker" | "arms">} vine
 * @returns {[left: number, right: number]}
 */
export function endsOf({ trunk, thicker, arms }) {
  const half = (trunk * thicker) / 2;
  const ends = [-half, half, ...arms.map(([tip]) => tip)];
  return [Math.min(...ends), Math.max(...ends)];
}

/**
 * @param {PackedVine} vine
 * @param {number} half
 */
function trunk(vine, half) {
  const top = -vine.cordon;
  const along = Array.from({ length: 13 }, (_, step) => {
    const share = step / 12;
    const sway = ((SWAY * vine.cordon) / (2 * Math.PI)) * (1 - Math.cos(2 * Math.PI * share));
    return { x: sway, y: (top + 26) * share };
  });
  const halfAt = (/** @type {number} */ share) => half * (1 + FLARE * Math.exp((-share * vine.cordon) / 70));
  const { edges: [left, right], bark, shade } = olderWood(along, halfAt, vine.trunk);
  // The knob where the arms part closes it.
  const [from, to] = [left[left.length - 1], right[right.length - 1]];
  const knob = `Q${from.x} ${top - 4} ${-half * 0.3} ${top - 7}Q${half * 0.5} ${top - 10} ${place(to)}`;
  return { d: `M${smooth(left)}${knob}L${smooth(right.reverse())}z`, bark, shade };
}

/**
 * An arm, with the bend from the trunk into it.
 *
 * @param {PackedVine} vine
 * @param {number} half
 * @param {number} tip
 * @param {number} thick
 * @param {number} number
 */
function arm(vine, half, tip, thick, number) {
  const [side, top] = [Math.sign(tip), -vine.cordon];
  const start = { x: side * (half + KNEE_MM), y: top + thick / 2 };
  const along = [start, { x: tip, y: top + (thick * TIP_SHARE) / 2 }];
  const halfAt = (/** @type {number} */ share) => {
    const left = (1 - share) * Math.abs(tip - start.x);
    return (thick / 2) * (1 - (1 - TIP_SHARE) * share) * Math.sqrt(Math.min(1, 0.3 + left / (thick * 0.6)));
  };
  const wood = olderWood(along, halfAt, thick + number, side);
  const [upper, lower] = side > 0 ? wood.edges : [wood.edges[1], wood.edges[0]];
  const low = lower[0].y;
  const knee = `Q${side * half} ${low.toFixed(1)} ${side * half} ${low + KNEE_MM}L0 ${low + KNEE_MM}z`;
  return { d: `M0 ${top}L${smooth(upper)}L${smooth([...lower].reverse())}${knee}`, bark: wood.bark + aroundKnee(side, half, low), shade: wood.shade };
}

/**
 * Bark that bends from the trunk into an arm.
 *
 * @param {number} side
 * @param {number} half
 * @param {number} low
 */
function aroundKnee(side, half, low) {
  const [x, y] = [side * (half + KNEE_MM), low + KNEE_MM];
  return [8, 20, 31].map((more, number) => {
    const far = KNEE_MM + more;
    const turns = [0.15, 0.75, 1.35].map((turn) => turn + 0.18 * (1 - number));
    return `M${smooth(turns.map((turn) => ({ x: x - side * Math.cos(turn) * far, y: y - Math.sin(turn) * far })))}`;
  }).join("");
}
