/**
 * Names of places on a small picture of a whole vine: each where it can be read.
 *
 * The page for a room has `rowsOfNames`: as many rows as are needed, since no list beside it tells
 * a name that is left out. Here a name goes where marks and other names, as the screen shows them,
 * leave room.
 */

import { meet } from "./areas.mjs";
import { APART_PX, asidesBesideHead, letterPx, lowerPx } from "./drawn_names.mjs";
import { lineTo, pushAside, takeLinesOff } from "./moved_lines.mjs";
import { pushOut } from "./name_pushes.mjs";
import { asideOffWood, woodOf } from "./names_off_wood.mjs";
import { turnOf } from "./name_rows.mjs";
import { viewsOf } from "./views.mjs";

const LEAST_PX = 11.1;
/** As high are the letters beside the wood, and what a letter that stands by itself must be. */
const LETTER_MM = 30;
const SMALLEST_LETTER_PX = 8;
/** The mark of a place has an edge of its own: a name may stand close to it. */
const APART_FROM_MARK_PX = 2;
/** A name beside the mark of the place in hand, which is two rows high, goes below it. */
const MOST_ROWS = 3;
/** It goes no further than it must: beside a mark less than whole rows are enough. */
const STEPS_A_ROW = 3;
const ENDLESS = { top: -Infinity, bottom: Infinity };
const EMPTY_SHARE = 0.12;
/** A name in whose place a mark stands, at the end of the line from its place. */
const TOLD = "pw-name-told";

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
 * row. Where that is full too it is hidden, and the list beside the drawing has it. A name that a
 * mark tells is not told twice.
 *
 * @param {SVGSVGElement} svg
 * @param {number} pixelsPerMm
 * @param {readonly Area[]} taken
 * @param {readonly HTMLElement[]} here  marks that tell names of places
 */
export function thinNames(svg, pixelsPerMm, taken, here) {
  if (pixelsPerMm === 0) return;
  const told = here.map((mark) => mark.textContent ?? "");
  svg.style.setProperty("--pw-name", `${(letterPx(pixelsPerMm) / pixelsPerMm).toFixed(1)}px`);
  takeLinesOff(svg);
  const drawn = namesOf(svg);
  for (const name of drawn) {
    name.style.removeProperty("transform");
    const isTold = told.includes(name.textContent ?? "");
    if (!isTold) name.classList.remove(TOLD);
    name.classList.toggle("pw-name-away", isTold && !name.classList.contains(TOLD));
  }
  const names = drawn.filter((one) => !told.includes(one.textContent ?? ""));
  const twice = viewsOf(svg) > 1;
  if (!twice && !names.some(isAboveWood)) names.sort((one, other) => turn(one) - turn(other));
  // From above the wood stands all around: a name that moved would stand at other wood.
  const stays = (/** @type {SVGElement} */ name) => twice && name.closest(".pw-places-inside") !== null;
  const ways = names.map((name) => (stays(name) ? 0 : isAboveWood(name) ? -1 : 1));
  const besideHead = asidesBesideHead(svg, pixelsPerMm, here);
  const lower = names.map((_name, number) => (ways[number] === 1 ? lowerPx(pixelsPerMm) : 0));
  const isOnWood = woodOf(svg);
  const lowered = names.map((name, number) => movedBy(letters(name), lower[number]));
  const starts = names.map((name, number) => {
    const [area, beside] = [lowered[number], besideHead.get(name.textContent ?? "")];
    if (beside !== undefined || twice || ways[number] !== 1) return beside ?? 0;
    const others = lowered.filter((one) => one !== area);
    return asideOffWood(area, isOnWood, outward(name), others);
  });
  const areas = lowered.map((area, number) => {
    const [left, right] = [area.left + starts[number], area.right + starts[number]];
    return { ...area, left, right };
  });
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
    const aside = area.left - areas[number].left + starts[number];
    const move = area.top - areas[number].top;
    const down = move + lower[number];
    if (aside !== 0) pushAside(name, aside, down, pixelsPerMm);
    else if (move !== 0) {
      name.style.transform = `translateY(${(down / pixelsPerMm).toFixed(1)}px)`;
      lineTo(name, lower[number], areas[number], move, [...taken, ...shown], pixelsPerMm);
    } else if (down !== 0) name.style.transform = `translate(0, ${(down / pixelsPerMm).toFixed(1)}px)`;
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
  const ways = names.map(outward);
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
 * @param {Area} area
 * @param {number} move  px down
 * @returns {Area}
 */
const movedBy = (area, move) => ({ ...area, top: area.top + move, bottom: area.bottom + move });

/**
 * @param {SVGSVGElement} svg
 * @returns {SVGElement[]}
 */
const namesOf = (svg) => [...svg.querySelectorAll(".pw-place-name")].map((one) => /** @type {SVGElement} */ (one));

/**
 * Which way leads from the trunk to a name: 1 to the right, -1 to the left.
 *
 * @param {SVGElement} name
 */
const outward = (name) => (Number(name.getAttribute("x")) < 0 ? -1 : 1);

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
    name.classList.remove("pw-name-away", TOLD);
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
