/**
 * What stands around the wood of a practice vine: wires and ground, trunk and arms. Few strokes
 * follow the wood, and one edge is dark, as in the handbook's full drawings.
 */

import { make } from "./strokes.mjs";

/** @import {PackedVine} from "./practice_drawing.mjs" */

/** A close-up at the end of an arm shows the wires going on. */
const BEYOND_MM = 600;
/** How far the bend from the trunk into an arm is rounded. */
const KNEE_MM = 80;
/** Bark: strokes and the gaps between them. */
const STROKES = "70 22 40 34 95 16";

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
  const top = -vine.cordon;
  const outlines = [
    `M${-half * 1.4} 0Q${-half} -90 ${-half} -260L${-half} ${top + 20}Q${-half} ${top} 0 ${top - 6}` +
      `Q${half} ${top} ${half} ${top + 20}L${half} -260Q${half} -90 ${half * 1.4} 0z`,
  ];
  const bark = [-0.6, -0.2, 0.15, 0.45, 0.7].map((lane, number) => `M${half * lane} ${-37 * number}V${top + 60}`);
  const shade = [`M${half - 6} -60V${top + 130}`];
  for (const [tip, thickness] of vine.arms) {
    const thick = thickness * vine.thicker;
    const [side, low] = [Math.sign(tip), top + thick];
    const end = tip - side * thick * 0.4;
    outlines.push(
      `M0 ${top}L${end} ${top}Q${tip} ${top} ${tip} ${top + thick * 0.3}Q${tip} ${top + thick * 0.6} ${end} ${top + thick * 0.6}` +
        `L${side * (half + KNEE_MM)} ${low}Q${side * half} ${low} ${side * half} ${low + KNEE_MM}L0 ${low + KNEE_MM}z`,
    );
    // Each lane begins farther out, so that gaps do not stand side by side.
    bark.push(...[0.25, 0.5, 0.75].map((lane) => `M${side * (half + 90 * lane)} ${top + thick * lane}L${end} ${top + thick * lane * 0.6}`));
    shade.push(`M${side * (half + KNEE_MM)} ${low - 5}L${end} ${top + thick * 0.6 - 5}`);
  }
  const ends = [-half * 1.4, half * 1.4, ...vine.arms.map(([tip]) => tip)];
  const group = make("g", { class: "pw-frame", "data-ends": `${Math.min(...ends)} ${Math.max(...ends)}` });
  // All lines first: those inside the body are painted over.
  group.append(
    ...outlines.map((d) => make("path", { class: "pw-frame-line", "stroke-width": 4.4, d })),
    ...outlines.map((d) => make("path", { class: "pw-frame-wood", stroke: "none", d })),
    make("path", { class: "pw-wash", fill: "none", stroke: "#000", "stroke-width": 9, "stroke-opacity": 0.25, d: shade.join("") }),
    make("path", { class: "pw-bark", fill: "none", "stroke-width": 1.6, "stroke-dasharray": STROKES, d: bark.join("") }),
  );
  return group;
}
