/** A drawing with numbered marks over it, which keep their size and grow with the text. */

import { element } from "./dom.mjs";
import { marksAtNames } from "./drawn_names.mjs";
import { VineDrawing } from "./drawing.mjs";
import { placesOfMarks } from "./mark_places.mjs";
import { allNames, hideCutWords, readable, thinNames } from "./place_names.mjs";
import { make } from "./strokes.mjs";

/**
 * @typedef {{x: number, y: number, text: string, kind: string}} Mark  x and y in mm
 *
 * @typedef {import("./mark_places.mjs").Spot & {text: string, kind: string}} Placed  on the glass, px
 */

/** The kind of a mark that names the place which is looked at. */
export const HERE = "pw-mark-here";
const TOUCH_PX = 24;
/** Room for a number of two digits, in heights of its letters. */
const NUMBER = { width: 2, height: 1.7 };
/** Height of a number's letters, in heights of the text around. */
const LETTER = 0.85;
/** The end of a line, on the wood. */
const DOT_PX = 2.5;
/** Left free between a mark and the edge of the window. */
const EDGE_PX = 1;

export class Stage {
  /**
   * @param {SVGSVGElement} svg
   * @param {import("./types.mjs").Sheet} sheet
   * @param {string} kind  class of the stage, `pw-stage-whole`
   */
  constructor(svg, sheet, kind) {
    this.drawing = new VineDrawing(svg, sheet);
    // A mouse meets the pane before the drawing, so that the pane has the drawing's tip.
    const tip = svg.querySelector(":scope > title")?.textContent ?? "";
    this.marksLayer = element("div", { class: "pw-marks", "aria-hidden": "true", title: tip });
    this.root = element("div", { class: `pw-stage ${kind}` }, svg, this.marksLayer);
    /** @type {Mark[]} */
    this.marks = [];
    /** @type {Placed[]} */
    this.placed = [];
    this.observer = new ResizeObserver(() => this.resize());
    this.observer.observe(this.root);
  }

  /** @param {Mark[]} marks */
  setMarks(marks) {
    this.marks = marks;
    this.placeMarks();
  }

  /**
   * @param {import("./drawing.mjs").Box} box
   * @param {Mark[]} [marks]
   */
  show(box, marks = this.marks) {
    this.marks = marks;
    this.drawing.show(box);
    this.placeMarks();
  }

  resize() {
    this.drawing.resize();
    this.placeMarks();
  }

  /** Marks of what lies outside the window are left out. */
  placeMarks() {
    // Once it is seen again, its size has changed.
    if (this.root.hidden) return;
    const { svg } = this.drawing;
    const scale = this.drawing.pixelsPerMm();
    this.marksLayer.style.setProperty("--pw-mm", `${scale.toFixed(3)}px`);
    const near = svg.classList.contains("pw-close-up");
    // Names that moved on the whole vine go back, with their lines.
    if (near) allNames(svg);
    readable(svg, scale);
    const inSight = this.marks.flatMap((mark) => {
      const spot = { ...this.drawing.toPixels(mark.x, mark.y), text: mark.text, kind: mark.kind };
      return this.isInside(spot) ? [spot] : [];
    });
    const [here, numbers] = [inSight.filter(isHere), inSight.filter((one) => !isHere(one))];
    if (!near) hideCutWords(svg);
    if (!near && numbers.length > 0) thinNames(svg, scale, [], []);
    const { placed, lines } = this.withLines(numbers);
    this.placed = [...here, ...placed];
    const marks = this.placed.map(markElement);
    this.marksLayer.replaceChildren(...lines, ...marks);
    keepInside(marks, this.root.getBoundingClientRect());
    if (near) return;
    const told = marks.slice(0, here.length);
    marksAtNames(svg, scale, told);
    const areas = marks.map((one) => one.getBoundingClientRect());
    thinNames(svg, scale, areas, told);
  }

  /** @param {import("./mark_places.mjs").Spot} spot */
  isInside({ left, top }) {
    const { clientWidth, clientHeight } = this.root;
    return left >= 0 && left <= clientWidth && top >= 0 && top <= clientHeight;
  }

  /**
   * Numbers beside what they speak of, and the lines that lead there.
   *
   * @param {readonly Placed[]} numbers
   * @returns {{placed: Placed[], lines: SVGElement[]}}
   */
  withLines(numbers) {
    if (numbers.length === 0) return { placed: [], lines: [] };
    const { width, height, left, top } = this.marksLayer.getBoundingClientRect();
    const letter = Number.parseFloat(getComputedStyle(this.marksLayer).fontSize) * LETTER;
    const size = { width: letter * NUMBER.width, height: letter * NUMBER.height };
    const words = [...this.drawing.svg.querySelectorAll("text")].flatMap((one) => {
      const area = one.getBoundingClientRect();
      if (area.width === 0) return [];
      return { left: area.left - left, right: area.right - left, top: area.top - top, bottom: area.bottom - top };
    });
    const places = placesOfMarks(numbers, size, { width, height }, words);
    const lines = make("svg", { class: "pw-mark-lines", viewBox: `0 0 ${width} ${height}` });
    const placed = numbers.flatMap((one, number) => {
      const place = places[number];
      const [x2, y2] = [one.left, one.top];
      if (place !== null) lines.append(make("line", { x1: place.left, y1: place.top, x2, y2 }));
      // Where there is no room for a number, a dot says that there is one in the close-up.
      lines.append(make("circle", { cx: x2, cy: y2, r: DOT_PX }));
      return place === null ? [] : [{ ...one, ...place }];
    });
    return { placed, lines: [lines] };
  }

  /**
   * The mark that a finger means, or null when none is within reach.
   *
   * @param {number} clientX
   * @param {number} clientY
   * @returns {Placed | null}
   */
  markAt(clientX, clientY) {
    const { left, top } = this.marksLayer.getBoundingClientRect();
    let [best, reach] = [/** @type {Placed | null} */ (null), TOUCH_PX];
    for (const spot of this.placed.filter((one) => !isHere(one))) {
      const distance = Math.hypot(spot.left + left - clientX, spot.top + top - clientY);
      if (distance <= reach) [best, reach] = [spot, distance];
    }
    return best;
  }

  destroy() {
    this.observer.disconnect();
    allNames(this.drawing.svg);
  }
}

/**
 * A mark at the edge of the window stands a little aside, so that the edge doesn't cut it.
 *
 * @param {readonly HTMLElement[]} marks
 * @param {DOMRect} stage
 */
function keepInside(marks, { left, right }) {
  for (const mark of marks) {
    const { left: from, right: to } = mark.getBoundingClientRect();
    const aside = Math.max(left + EDGE_PX - from, 0) || Math.min(right - EDGE_PX - to, 0);
    if (aside !== 0) mark.style.setProperty("--pw-aside", `${aside.toFixed(1)}px`);
  }
}

/** @param {Placed} mark */
const isHere = ({ kind }) => kind === HERE;

/** @param {Placed} mark */
function markElement({ left, top, text, kind }) {
  const made = element("span", { class: `pw-mark ${kind}` }, text);
  made.style.left = `${left}px`;
  made.style.top = `${top}px`;
  return made;
}
