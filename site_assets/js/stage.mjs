/** A drawing with numbered marks over it, which keep their size and grow with the text. */

import { element } from "./dom.mjs";
import { VineDrawing } from "./drawing.mjs";
import { allNames, hideCutWords, readable, thinNames } from "./place_names.mjs";

/** @typedef {{x: number, y: number, text: string, kind: string}} Mark  x and y in mm */

/** @typedef {{left: number, top: number, text: string, kind: string}} Spot  on the glass, px */

const APART_PX = 26;
const TOUCH_PX = 24;
const MOST_STACKED = 3;
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
    /** @type {Spot[]} */
    this.spots = [];
    this.observer = new ResizeObserver(() => this.resize());
    this.observer.observe(this.root);
  }

  /** @param {Mark[]} marks */
  setMarks(marks) {
    this.marks = marks;
    this.placeMarks();
  }

  /** @param {import("./drawing.mjs").Box} box */
  show(box) {
    this.drawing.show(box);
    this.placeMarks();
  }

  resize() {
    this.drawing.resize();
    this.placeMarks();
  }

  /** Marks outside the window are left out; one that would cover another moves up. */
  placeMarks() {
    // Once it is seen again, its size has changed.
    if (this.root.hidden) return;
    const { clientWidth, clientHeight } = this.root;
    /** @type {Spot[]} */
    const taken = [];
    for (const mark of this.marks) {
      const spot = { ...this.drawing.toPixels(mark.x, mark.y), text: mark.text, kind: mark.kind };
      const across = spot.left >= 0 && spot.left <= clientWidth;
      if (across && spot.top >= 0 && spot.top <= clientHeight) stack(spot, taken);
    }
    this.spots = taken;
    const marks = taken.map(markElement);
    this.marksLayer.replaceChildren(...marks);
    this.marksLayer.style.setProperty("--pw-mm", `${this.drawing.pixelsPerMm().toFixed(3)}px`);
    keepInside(marks, this.root.getBoundingClientRect());
    const { svg } = this.drawing;
    readable(svg, this.drawing.pixelsPerMm());
    if (svg.classList.contains("pw-close-up")) return;
    hideCutWords(svg);
    const areas = marks.map((one) => one.getBoundingClientRect());
    thinNames(svg, this.drawing.pixelsPerMm(), areas, taken.map(({ text }) => text));
  }

  /**
   * The mark that a finger means, or null when none is within reach.
   *
   * @param {number} clientX
   * @param {number} clientY
   * @returns {Spot | null}
   */
  markAt(clientX, clientY) {
    const { left, top } = this.marksLayer.getBoundingClientRect();
    let [best, reach] = [/** @type {Spot | null} */ (null), TOUCH_PX];
    for (const spot of this.spots) {
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

/**
 * Finds a free place above the others; where too many stand already, the last one says so.
 *
 * @param {Spot} spot
 * @param {Spot[]} taken
 */
function stack(spot, taken) {
  for (let height = 0; height < MOST_STACKED; height += 1) {
    const inWay = taken.find(
      (one) => Math.hypot(one.left - spot.left, one.top - spot.top) < APART_PX,
    );
    if (inWay === undefined) {
      taken.push(spot);
      return;
    }
    if (height === MOST_STACKED - 1) inWay.text = "\u2026";
    spot.top = inWay.top - APART_PX;
    spot.left = inWay.left;
  }
}

/** @param {Spot} spot */
function markElement({ left, top, text, kind }) {
  const made = element("span", { class: `pw-mark ${kind}` }, text);
  made.style.left = `${left}px`;
  made.style.top = `${top}px`;
  return made;
}
