/** Names of places on a small picture of a whole vine: few that can be read, rather than all. */

const LETTER_PX = 12;
const APART_PX = 3;

/** @typedef {{left: number, right: number, top: number, bottom: number}} Area  px on the screen */

/**
 * Makes the names as large as can be read, and hides each that would lie over another or over
 * what is in `taken` already. The list beside the drawing has all of them. A name that a mark
 * tells at its place already is not told twice.
 *
 * @param {SVGSVGElement} svg
 * @param {number} pixelsPerMm
 * @param {readonly Area[]} taken
 * @param {readonly string[]} told
 */
export function thinNames(svg, pixelsPerMm, taken, told) {
  if (pixelsPerMm === 0) return;
  svg.style.setProperty("--pw-name", `${(LETTER_PX / pixelsPerMm).toFixed(1)}px`);
  const all = [...svg.querySelectorAll(".pw-place-name")];
  for (const name of all) name.classList.toggle("pw-name-away", told.includes(name.textContent ?? ""));
  const names = all.filter((one) => !one.classList.contains("pw-name-away"));
  const free = freeOf(names.map((one) => one.getBoundingClientRect()), taken);
  names.forEach((name, number) => name.classList.toggle("pw-name-away", !free[number]));
}

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
  for (const name of svg.querySelectorAll(".pw-name-away")) name.classList.remove("pw-name-away");
  svg.classList.remove("pw-words-cut");
  svg.style.removeProperty("--pw-name");
  if (svg.style.length === 0) svg.removeAttribute("style");
}

/**
 * For each area whether it stays clear of those before it that stay, and of what is taken.
 *
 * @param {readonly Area[]} areas
 * @param {readonly Area[]} taken
 * @returns {boolean[]}
 */
export function freeOf(areas, taken) {
  const kept = [...taken];
  return areas.map((area) => {
    const isFree = !kept.some((one) => meet(one, area));
    if (isFree) kept.push(area);
    return isFree;
  });
}

/**
 * @param {Area} one
 * @param {Area} other
 */
function meet(one, other) {
  const across = one.left < other.right + APART_PX && other.left < one.right + APART_PX;
  return across && one.top < other.bottom && other.top < one.bottom;
}
