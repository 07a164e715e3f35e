/** A drawing with numbered marks over it, which keep their size and grow with the text. */

import { element } from "./dom.mjs";
import { VineDrawing } from "./drawing.mjs";

/** @typedef {{x: number, y: number, text: string, kind: string}} Mark  x and y in mm */

const APART_PX = 24;

export class Stage {
  /**
   * @param {SVGSVGElement} svg
   * @param {import("./types.mjs").Sheet} sheet
   * @param {string} kind  class of the stage, `pw-stage-whole`
   */
  constructor(svg, sheet, kind) {
    this.drawing = new VineDrawing(svg, sheet);
    this.marksLayer = element("div", { class: "pw-marks", "aria-hidden": "true" });
    this.root = element("div", { class: `pw-stage ${kind}` }, svg, this.marksLayer);
    /** @type {Mark[]} */
    this.marks = [];
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
    const { clientWidth, clientHeight } = this.root;
    /** @type {{left: number, top: number}[]} */
    const taken = [];
    const shown = this.marks.flatMap((mark) => {
      const place = this.drawing.toPixels(mark.x, mark.y);
      const inside =
        place.left >= 0 && place.left <= clientWidth && place.top >= 0 && place.top <= clientHeight;
      if (!inside) return [];
      while (taken.some((one) => Math.hypot(one.left - place.left, one.top - place.top) < APART_PX)) {
        place.top -= APART_PX;
      }
      taken.push(place);
      const made = element("span", { class: `pw-mark ${mark.kind}` }, mark.text);
      made.style.left = `${place.left}px`;
      made.style.top = `${place.top}px`;
      return [made];
    });
    this.marksLayer.replaceChildren(...shown);
  }

  destroy() {
    this.observer.disconnect();
  }
}
