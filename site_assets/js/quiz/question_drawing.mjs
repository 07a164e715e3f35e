/** The drawing above a question: close up or whole, with one piece marked where asked for. */

import { button, element } from "../dom.mjs";

/** @import {Drawing} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

const SVG = "http://www.w3.org/2000/svg";
const PAD_MM = 8;
/** How far from a thin cane a finger may come down, in steps. */
const REACHES_PX = [0, 6, 12, 18, 22];
const DIRECTIONS = 12;
/** More frames than this are drawn thin, so that the wood still shows. */
const FEW = 4;

export class QuestionDrawing {
  /**
   * @param {Drawing} asked
   * @param {ParentNode} page  holds the templates
   * @param {QuizWords} words
   */
  constructor(asked, page, words) {
    this.asked = asked;
    const template = /** @type {HTMLTemplateElement | null} */ (
      page.querySelector(`template[data-pencilwood-drawing="${CSS.escape(asked.drawing)}"]`)
    );
    const copy = template?.content.querySelector("svg")?.cloneNode(true);
    this.svg = /** @type {SVGSVGElement | undefined} */ (copy);
    this.root = element("figure", { class: "pw-ask-drawing" });
    if (this.svg === undefined) return;
    this.whole = this.svg.getAttribute("viewBox") ?? "";
    this.window = element("div", { class: "pw-ask-window", tabindex: 0, role: "region" }, this.svg);
    this.window.setAttribute("aria-label", words.say("drawing.label"));
    this.buttons = element("div", { class: "pw-buttons" });
    this.root.append(this.window, this.buttons);
    if (asked.box !== null) this.addFrames(asked, words);
    this.addSizes(words);
  }

  /**
   * On a phone the whole vine is small: twice the size, it is scrolled like any wide table.
   *
   * @param {QuizWords} words
   */
  addSizes(words) {
    const larger = button(words.say("drawing.larger"), () => {
      const large = this.root.classList.toggle("pw-ask-large");
      larger.setAttribute("aria-pressed", `${large}`);
    });
    larger.setAttribute("aria-pressed", "false");
    this.buttons?.append(larger);
  }

  /**
   * @param {Drawing} asked
   * @param {QuizWords} words
   */
  addFrames(asked, words) {
    const close = button(words.say("drawing.close", { name: asked.at ?? "" }), () => frame(true));
    const whole = button(words.say("drawing.whole"), () => frame(false));
    const frame = (/** @type {boolean} */ near) => {
      this.svg?.setAttribute("viewBox", near ? (asked.box ?? []).join(" ") : (this.whole ?? ""));
      this.svg?.classList.toggle("pw-close-up", near);
      close.setAttribute("aria-pressed", `${near}`);
      whole.setAttribute("aria-pressed", `${!near}`);
    };
    frame(true);
    this.buttons?.append(close, whole);
  }

  /**
   * The piece with one of these names that a finger means: the one under it, or the nearest.
   *
   * @param {number} clientX
   * @param {number} clientY
   * @param {ReadonlySet<string>} names
   * @returns {string | null}
   */
  nameAt(clientX, clientY, names) {
    for (const reach of REACHES_PX) {
      for (let turn = 0; turn < (reach === 0 ? 1 : DIRECTIONS); turn += 1) {
        const angle = (2 * Math.PI * turn) / DIRECTIONS;
        const x = clientX + reach * Math.cos(angle);
        const y = clientY + reach * Math.sin(angle);
        const name = this.nameUnder(document.elementFromPoint(x, y), names);
        if (name !== null) return name;
      }
    }
    return null;
  }

  /**
   * @param {Element | null} hit
   * @param {ReadonlySet<string>} names
   */
  nameUnder(hit, names) {
    let at = hit !== null && this.svg?.contains(hit) ? hit : null;
    while (at !== null && at !== this.svg) {
      const name = at.getAttribute("data-part") ?? at.getAttribute("data-frame");
      if (name !== null && names.has(name)) return name;
      at = at.parentElement;
    }
    return null;
  }

  /**
   * Puts a frame around pieces: dashed for what was picked, double for what is right.
   *
   * @param {readonly string[]} names
   * @param {"picked" | "right"} kind
   */
  mark(names, kind) {
    for (const old of this.root.querySelectorAll(`.pw-ask-${kind}`)) old.remove();
    for (const name of names) {
      const piece = /** @type {SVGGraphicsElement | null | undefined} */ (
        this.svg?.querySelector(`[data-part="${CSS.escape(name)}"], [data-frame="${CSS.escape(name)}"]`)
      );
      if (!piece) continue;
      const box = piece.getBBox();
      const frame = document.createElementNS(SVG, "rect");
      const pad = kind === "right" ? 2 * PAD_MM : PAD_MM;
      const many = names.length > FEW ? " pw-ask-many" : "";
      frame.setAttribute("class", `pw-ask-frame pw-ask-${kind}${many}`);
      frame.setAttribute("x", `${box.x - pad}`);
      frame.setAttribute("y", `${box.y - pad}`);
      frame.setAttribute("width", `${box.width + 2 * pad}`);
      frame.setAttribute("height", `${box.height + 2 * pad}`);
      this.svg?.append(frame);
    }
  }
}
