/**
 * Shows the vine before pruning, after each pass of the trainer's answer, and as planned. The
 * exercise's own drawing carries all of these states by class, so this only copies it.
 */

import { copyOf } from "./drawing.mjs";

let made = 0;

export class Stages {
  /**
   * @param {HTMLFieldSetElement} root  `[data-pencilwood-stages=SLUG]` with radio buttons
   * @param {SVGSVGElement} svg  the drawing to copy
   */
  constructor(root, svg) {
    this.root = root;
    this.source = svg;
    /** @type {SVGSVGElement | null} */
    this.drawing = null;
    this.show = this.show.bind(this);
    made += 1;
    this.prefix = `pws${made}`;
  }

  bind() {
    this.root.hidden = false;
    this.root.addEventListener("change", this.show);
    // A drawing that nobody looks at costs nothing: it is copied when its fold is opened.
    const fold = this.root.closest("details");
    if (fold && !fold.open) fold.addEventListener("toggle", this.show, { once: true });
    else this.show();
  }

  show() {
    const chosen = /** @type {HTMLInputElement | null} */ (
      this.root.querySelector("input:checked")
    );
    if (this.drawing === null) {
      this.drawing = copyOf(this.source, this.prefix);
      for (const point of this.drawing.querySelectorAll(".pw-cutpoints")) point.remove();
      for (const part of this.drawing.querySelectorAll(".pw-gone, .pw-tied-away")) {
        part.classList.remove("pw-gone", "pw-fallen", "pw-tied-away");
      }
      for (const tied of this.drawing.querySelectorAll(".pw-tied-now")) tied.remove();
      this.root.append(this.drawing);
    }
    const stage = chosen?.value ?? "fine";
    const label = chosen?.closest("label")?.textContent?.trim() ?? "";
    this.drawing.setAttribute("class", `pw-vine pw-show-${stage}`);
    this.drawing.setAttribute("aria-label", label);
  }
}
