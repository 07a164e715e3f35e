/**
 * Names around a head on the page for a room: each at the end of the line to its own wood. They move
 * sideways along the head with their lines, where `place_names.mjs` has rows below or above an arm.
 */

import { fannedOut } from "./room_places.mjs";
import { viewsOf } from "./views.mjs";

/** From the end of its line down to the foot of a name, and inward, in heights of its letters. */
const NAME_DROP = 0.85;
const NAME_LEAN = 0.4;
/** How far a line goes down at least, in the same: flat lines run together. */
const LINE_DROP = 1.5;
/** How thick lines are: as drawn, in mm, or in the same where the drawing is small. */
const LINE_THICK = [2.4, 0.035];
const HALO_THICK = [8, 0.12];

/**
 * A name, and the line from it to the foot of its wood, as they were drawn.
 *
 * @param {SVGElement} place
 */
function leaderOf(place) {
  const name = place.querySelector(".pw-place-name");
  const lines = [...place.querySelectorAll(".pw-halo, .pw-tick")];
  place.dataset.line ??= lines[0]?.getAttribute("d") ?? "";
  place.dataset.named ??= name?.getAttribute("x") ?? "";
  const [x, end, across, down] = (place.dataset.line.match(/-?[\d.]+/g) ?? []).map(Number);
  if (name === null || down === undefined) return null;
  const foot = { x: x + across, y: end + down };
  return { name, lines, x: Number(place.dataset.named), foot, end };
}

/**
 * Puts the names around a head where each can be read at the end of its own line. A drawing whose
 * names stand below an arm, or on a second view, stays as it is.
 *
 * @param {SVGSVGElement} svg
 * @param {{x: number, width: number}} shown  what is in sight, mm
 * @param {number} letter  height of a letter, mm
 * @param {number} lowest  lower edge of what is in sight, mm
 */
export function fanNames(svg, shown, letter, lowest) {
  if (viewsOf(svg) !== 1) return;
  const places = /** @type {SVGElement[]} */ ([...svg.querySelectorAll(".pw-places-inside > .pw-place")]);
  const drawn = places.map((place) => leaderOf(place)).filter((one) => one !== null);
  for (const side of [-1, 1]) {
    const there = drawn.filter(({ x }) => Math.sign(x) === side);
    there.sort((one, other) => Math.abs(one.x) - Math.abs(other.x));
    const edge = side < 0 ? -shown.x : shown.x + shown.width;
    const names = there.map(({ x, name }) => ({ away: Math.abs(x), text: name.textContent ?? "" }));
    fannedOut(names, letter, edge).forEach((away, number) => {
      const { name, lines, foot } = there[number];
      const room = lowest - letter * (NAME_DROP + 0.3);
      const end = Math.max(there[number].end, Math.min(foot.y + letter * LINE_DROP, room));
      name.setAttribute("x", (side * away).toFixed(1));
      name.setAttribute("y", (end + letter * NAME_DROP).toFixed(1));
      const tip = (side * (away - letter * NAME_LEAN)).toFixed(1);
      for (const line of lines) {
        line.setAttribute("d", `M${foot.x} ${foot.y}L${tip} ${end.toFixed(1)}`);
        const [least, share] = line.matches(".pw-halo") ? HALO_THICK : LINE_THICK;
        const thick = Math.max(least, letter * share);
        line.setAttribute("stroke-width", thick.toFixed(1));
      }
    });
  }
}
