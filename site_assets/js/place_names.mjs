/**
 * Names of places on a small picture of a whole vine: each where it can be read.
 *
 * The page for a room has `rowsOfNames`: as many rows as are needed, since no list beside it tells
 * a name that is left out. Here a name goes where marks and other names, as the screen shows them,
 * leave room.
 */

import { isIn, meet } from "./areas.mjs";
import { pushOut } from "./name_pushes.mjs";
import { NAME_WIDTH, turnOf } from "./name_rows.mjs";
import { make } from "./strokes.mjs";
import { viewsOf } from "./views.mjs";

const LETTER_PX = 12;
const LEAST_PX = 11.1;
/** As high are the letters beside the wood, and what a letter that stands by itself must be. */
const LETTER_MM = 30;
const SMALLEST_LETTER_PX = 8;
const APART_PX = 5;
/** The mark of a place has an edge of its own: a name may stand close to it. */
const APART_FROM_MARK_PX = 2;
/** A name beside the mark of the place in hand, which is two rows high, goes below it. */
const MOST_ROWS = 3;
/** It goes no further than it must: beside a mark less than whole rows are enough. */
const STEPS_A_ROW = 3;
const ENDLESS = { top: -Infinity, bottom: Infinity };
const EMPTY_SHARE = 0.12;
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
 * Lets no letters be smaller than can be read; those beside the wood of a whole vine, which have no
 * room to grow, are left out where they would be: the close-up has them.
 *
 * @param {SVGSVGElement} svg
 * @param {number} pixelsPerMm
 */
export function readable(svg, pixelsPerMm) {
  if (pixelsPerMm === 0) return;
  svg.style.setProperty("--pw-least", `${(LEAST_PX / pixelsPerMm).toFixed(1)}px`);
  svg.classList.toggle("pw-letters-small", LETTER_MM * pixelsPerMm < SMALLEST_LETTER_PX);
}

/**
 * Makes the names as large as can be read. One that would lie over another, or over what is in
 * `taken` already, moves up to three rows away from the wood; where no row is free, outward in its own
 * row. Where that is full too it is hidden, and the list beside the drawing has it. A name that a mark tells at its place is not told twice.
 *
 * @param {SVGSVGElement} svg
 * @param {number} pixelsPerMm
 * @param {readonly Area[]} taken
 * @param {readonly string[]} told
 */
export function thinNames(svg, pixelsPerMm, taken, told) {
  if (pixelsPerMm === 0) return;
  svg.style.setProperty("--pw-name", `${(LETTER_PX / pixelsPerMm).toFixed(1)}px`);
  takeLinesOff(svg);
  const drawn = namesOf(svg);
  for (const name of drawn) {
    name.style.removeProperty("transform");
    name.classList.toggle("pw-name-away", told.includes(name.textContent ?? ""));
  }
  const names = drawn.filter((one) => !one.classList.contains("pw-name-away"));
  const twice = viewsOf(svg) > 1;
  if (!twice && !names.some(isAboveWood)) names.sort((one, other) => turn(one) - turn(other));
  // From above the wood stands all around: a name that moved would stand at other wood.
  const stays = (/** @type {SVGElement} */ name) => twice && name.closest(".pw-places-inside") !== null;
  const ways = names.map((name) => (stays(name) ? 0 : isAboveWood(name) ? -1 : 1));
  const areas = names.map(letters);
  const sight = svg.getBoundingClientRect();
  const moves = movesOf(areas, taken, ways, sight);
  const below = areas.map((area, number) => {
    const move = moves[number];
    return move === null ? null : movedBy(area, move);
  });
  const all = twice ? below : withPushed(names, areas, below, taken, sight);
  const shown = all.filter((one) => one !== null);
  names.forEach((name, number) => {
    const area = all[number];
    name.classList.toggle("pw-name-away", area === null);
    if (area === null) return;
    const [aside, move] = [area.left - areas[number].left, area.top - areas[number].top];
    if (aside !== 0) pushAside(name, aside, move, pixelsPerMm);
    else if (move !== 0) {
      name.style.transform = `translateY(${(move / pixelsPerMm).toFixed(1)}px)`;
      lineTo(name, areas[number], move, [...taken, ...shown], pixelsPerMm);
    }
  });
}

/**
 * The same with room made for names below an arm that found none below their places.
 *
 * @param {readonly SVGElement[]} names
 * @param {readonly Area[]} areas  as they were drawn
 * @param {readonly (Area | null)[]} placed
 * @param {readonly Area[]} taken
 * @param {Area} sight
 * @returns {readonly (Area | null)[]}
 */
function withPushed(names, areas, placed, taken, sight) {
  const ways = names.map((name) => (Number(name.getAttribute("x")) < 0 ? -1 : 1));
  const isTaken = (/** @type {Area} */ area) =>
    area.left < sight.left ||
    sight.right < area.right ||
    taken.some((one) => meet(one, area, APART_FROM_MARK_PX));
  return areas.reduce((all, area, number) => {
    if (all[number] !== null || isAboveWood(names[number])) return all;
    const asked = all.map((one, other) => (other === number ? area : one));
    return pushOut(number, asked, isTaken, ways, APART_PX) ?? all;
  }, placed);
}

/**
 * Moves a name aside, with one line from its place in the place of the line that was drawn.
 *
 * @param {SVGElement} name
 * @param {number} aside  px to the right
 * @param {number} move  px down
 * @param {number} pixelsPerMm
 */
function pushAside(name, aside, move, pixelsPerMm) {
  const [across, down] = [aside / pixelsPerMm, move / pixelsPerMm];
  name.style.transform = `translate(${across.toFixed(1)}px, ${down.toFixed(1)}px)`;
  const drawn = /** @type {SVGPathElement[]} */ ([...(name.parentNode?.querySelectorAll(DRAWN_LINES) ?? [])]);
  if (drawn.length === 0) return;
  // Around a head lines are drawn from the name, along an arm from the place.
  const middle = Number(name.getAttribute("x"));
  const ends = [drawn[0].getPointAtLength(0), drawn[0].getPointAtLength(drawn[0].getTotalLength())];
  const [from] = ends.sort((one, other) => Math.abs(other.x - middle) - Math.abs(one.x - middle));
  const [x, y] = [Number(name.getAttribute("x")) + across, Number(name.getAttribute("y")) + down];
  const letter = LETTER_PX / pixelsPerMm;
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
 * @param {Area} area
 * @param {number} move  px down
 * @returns {Area}
 */
const movedBy = (area, move) => ({ ...area, top: area.top + move, bottom: area.bottom + move });

/**
 * Draws the line from the wood on to a name that has moved away from it, unless names or marks
 * leave it no way.
 *
 * @param {SVGElement} name
 * @param {Area} area  of the name before it moved
 * @param {number} move  px down
 * @param {readonly Area[]} others
 * @param {number} pixelsPerMm
 */
function lineTo(name, area, move, others, pixelsPerMm) {
  const aside = asideOf(area, move, others);
  if (aside === null) return;
  const [x, foot] = [name.getAttribute("x"), Number(name.getAttribute("y"))];
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
function takeLinesOff(svg) {
  for (const one of svg.querySelectorAll(":is(.pw-tick, .pw-halo)[visibility]")) one.removeAttribute("visibility");
  for (const line of svg.querySelectorAll(`.${LINE}`)) line.remove();
}

/**
 * @param {SVGSVGElement} svg
 * @returns {SVGElement[]}
 */
const namesOf = (svg) => [...svg.querySelectorAll(".pw-place-name")].map((one) => /** @type {SVGElement} */ (one));

/**
 * Where the capitals and numbers of a name are; its box has room for letters below the line too.
 *
 * @param {SVGElement} name
 * @returns {Area}
 */
function letters(name) {
  const { left, right, top, bottom, height } = name.getBoundingClientRect();
  return { left, right, top: top + EMPTY_SHARE * height, bottom: bottom - EMPTY_SHARE * height };
}

/**
 * Whether a name stands above the foot of its wood, as where shoots hang.
 *
 * @param {SVGElement} name
 */
function isAboveWood(name) {
  const foot = name.closest("[data-y]")?.getAttribute("data-y");
  return foot !== null && foot !== undefined && Number(name.getAttribute("y")) < Number(foot);
}

/**
 * When a name below an arm takes its row.
 *
 * @param {SVGElement} name
 */
const turn = (name) => turnOf(Number(name.closest("[data-x]")?.getAttribute("data-x")), Number(name.getAttribute("x")));

/**
 * Leaves the names and heights of the wires out where the edge of the picture would cut one.
 *
 * @param {SVGSVGElement} svg
 */
export function hideCutWords(svg) {
  const { right } = svg.getBoundingClientRect();
  const words = [...svg.querySelectorAll(".pw-wire-name, .pw-wire-height")];
  svg.classList.toggle("pw-words-cut", words.some((one) => one.getBoundingClientRect().right > right));
}

/**
 * Shows all names again as they were drawn.
 *
 * @param {SVGSVGElement} svg
 */
export function allNames(svg) {
  takeLinesOff(svg);
  for (const name of namesOf(svg)) {
    name.classList.remove("pw-name-away");
    name.style.removeProperty("transform");
    if (name.style.length === 0) name.removeAttribute("style");
  }
  svg.classList.remove("pw-words-cut", "pw-letters-small");
  svg.style.removeProperty("--pw-name");
  svg.style.removeProperty("--pw-least");
  if (svg.style.length === 0) svg.removeAttribute("style");
}

/**
 * For each area how far it moves to be clear of those before it and of what is taken, by thirds of
 * its own height; null where no row is free.
 *
 * @param {readonly Area[]} areas
 * @param {readonly Area[]} taken
 * @param {readonly number[]} ways  of each: 1 for down, -1 for up, 0 where it may not move
 * @param {{top: number, bottom: number}} [sight]  what the edges of the drawing leave
 * @returns {(number | null)[]}
 */
export function movesOf(areas, taken, ways, sight = ENDLESS) {
  /** @type {Area[]} */
  const kept = [];
  return areas.map((area, number) => {
    const steps = ways[number] === 0 ? 0 : MOST_ROWS * STEPS_A_ROW;
    for (let step = 0; step <= steps; step += 1) {
      const move = step === 0 ? 0 : (ways[number] * step * (area.bottom - area.top)) / STEPS_A_ROW;
      const moved = movedBy(area, move);
      const isFree =
        (move === 0 || (sight.top <= moved.top && moved.bottom <= sight.bottom)) &&
        !taken.some((one) => meet(one, moved, APART_FROM_MARK_PX)) &&
        !kept.some((one) => meet(one, moved, APART_PX));
      if (isFree) {
        kept.push(moved);
        return move;
      }
    }
    return null;
  });
}
