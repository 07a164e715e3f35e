/**
 * The grain of wood that the browser draws: uneven edges, strokes of bark, one edge in shade. The
 * same vine looks the same on every phone, so nothing here draws lots. Lengths are millimetres, y
 * grows downward; an `aside` is a share of half the thickness, negative to the left of the way.
 */

import { beside, between, place } from "./strokes.mjs";

/** @import {Point} from "./strokes.mjs" */

/** About every so many millimetres an edge bends, and a stroke of bark ends. */
const BEND_MM = 26;
const STROKE_MM = 70;
/** How far apart strokes run side by side. */
const LANE_MM = 10;
const MOST_UNEVEN = 0.05;

/**
 * A number from 0 to 1 that looks like chance and follows from two others.
 *
 * @param {number} seed
 * @param {number} number
 */
export function grain(seed, number) {
  const wild = Math.sin(seed * 12.9898 + number * 78.233) * 43758.5453;
  return wild - Math.floor(wild);
}

/**
 * A smooth path through points; without the command that begins it.
 *
 * @param {Point[]} points
 */
export function smooth(points) {
  const last = points.length - 1;
  const bends = points.slice(1).map((to, number) => {
    const [before, from, after] = [points[Math.max(number - 1, 0)], points[number], points[Math.min(number + 2, last)]];
    return `C${place(lean(from, before, to))} ${place(lean(to, after, from))} ${place(to)}`;
  });
  return place(points[0]) + bends.join("");
}

/**
 * @param {Point} at
 * @param {Point} away
 * @param {Point} toward
 */
function lean(at, away, toward) {
  return { x: at.x + (toward.x - away.x) / 6, y: at.y + (toward.y - away.y) / 6 };
}

/**
 * Older wood along a line of places: its uneven outline, its bark, and its edge in shade.
 *
 * @param {Point[]} along
 * @param {(share: number) => number} halfAt  half its thickness, by the share of the way
 * @param {number} seed
 * @param {number} [shaded]  1 where the edge to the right of who walks along is dark, or -1
 * @returns {{edges: [Point[], Point[]], bark: string, shade: string}}
 */
export function olderWood(along, halfAt, seed, shaded = 1) {
  const long = along.slice(1).reduce((sum, to, number) => sum + Math.hypot(to.x - along[number].x, to.y - along[number].y), 0);
  /** @param {number} share @param {number} aside */
  const at = (share, aside) => {
    const way = Math.min(Math.max(share, 0), 1) * (along.length - 1);
    const from = Math.min(Math.floor(way), along.length - 2);
    const [a, b] = [along[from], along[from + 1]];
    return beside(a, b, between(a, b, way - from), aside * halfAt(share));
  };
  const bends = Math.max(2, Math.round(long / BEND_MM));
  const edge = (/** @type {number} */ side) =>
    Array.from({ length: bends + 1 }, (_, bend) => {
      const uneven = 1 + (grain(seed + side, bend) - 0.5) * 2 * MOST_UNEVEN;
      return at(bend / bends, side * uneven);
    });
  const [left, right] = [edge(-1), edge(1)];
  return { edges: [left, right], bark: strokes(at, long, halfAt(0.5), seed), shade: shadeOf(at, shaded) };
}

/**
 * Strokes run side by side in lanes, one after the other, none as long as the next one. Fewer of
 * them stand where the light falls.
 *
 * @param {(share: number, aside: number) => Point} at
 * @param {number} long
 * @param {number} half
 * @param {number} seed
 */
function strokes(at, long, half, seed) {
  const lanes = Math.max(2, Math.round((2 * half) / LANE_MM));
  let path = "";
  for (let lane = 0; lane < lanes; lane += 1) {
    const aside = ((2 * lane + 1) / lanes - 1) * 0.88;
    const gap = aside < -0.25 ? 55 : 20;
    let number = lane * 50;
    let from = grain(seed, number) * Math.min(30, long / 3) + 4;
    while (from < long - 12) {
      const to = Math.min(from + STROKE_MM * (0.4 + grain(seed, number + 1)), long - 3);
      const wave = aside + (grain(seed, number + 2) - 0.5) * 0.22;
      path += `M${smooth([at(from / long, aside), at((from + to) / 2 / long, wave), at(to / long, aside)])}`;
      from = to + gap * (0.3 + grain(seed, number + 3));
      number += 4;
    }
  }
  return path;
}

/**
 * @param {(share: number, aside: number) => Point} at
 * @param {number} shaded
 */
function shadeOf(at, shaded) {
  return `M${smooth([0.04, 0.35, 0.65, 0.94].map((share) => at(share, shaded * 0.8)))}`;
}
