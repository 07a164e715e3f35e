/**
 * Points, lines and the few SVG elements that a drawing made in the browser needs.
 */

/** @typedef {{x: number, y: number}} Point */

const SVG = "http://www.w3.org/2000/svg";

/**
 * @param {Point} a
 * @param {Point} b
 * @param {number} share
 */
export function between(a, b, share) {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/**
 * A place beside the line from a to b.
 *
 * @param {Point} a
 * @param {Point} b
 * @param {Point} at
 * @param {number} aside
 */
export function beside(a, b, at, aside) {
  const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: at.x - ((b.y - a.y) / long) * aside, y: at.y + ((b.x - a.x) / long) * aside };
}

/**
 * A place as a path has it, to a tenth of a millimetre.
 *
 * @param {Point} at
 */
export function place({ x, y }) {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}

/**
 * @param {string} words
 * @param {string} name
 * @param {number} size
 * @param {number} x
 * @param {number} y
 */
export function text(words, name, size, x, y) {
  const look = { class: name, "font-size": size, "stroke-width": size / 6, "paint-order": "stroke" };
  const made = make("text", { ...look, "text-anchor": "middle", x, y });
  made.textContent = words;
  return made;
}

/**
 * @template {keyof SVGElementTagNameMap} T
 * @param {T} tag
 * @param {Record<string, string | number>} attributes
 */
export function make(tag, attributes) {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, `${value}`);
  return made;
}
