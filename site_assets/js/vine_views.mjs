/**
 * The drawing a learner prunes in, in one frame: the whole vine, where a tap chooses a piece of
 * wood, and the close-up of its position, where a tap chooses another piece or cuts this one.
 */

import { goalWords } from "./bud_goal.mjs";
import { button, element, setText } from "./dom.mjs";
import { copyOf } from "./drawing.mjs";
import { frameOf, frameOfWood, reaching } from "./frames.mjs";
import { HERE, Stage } from "./stage.mjs";
import { onTap } from "./tap.mjs";
import { showTied } from "./tied_wood.mjs";
import { isOnRing, pieceAt, pieceNear } from "./under_finger.mjs";
import { uncut } from "./wood.mjs";

/** @import {Sheet} from "./types.mjs" */

/**
 * @typedef {object} ViewActions
 * @property {(piece: number) => void} choose
 * @property {(piece: number, buds: number | null) => void} cut
 * @property {() => void} missed  a tap on the close-up that found nothing
 * @property {() => void} closer
 * @property {(near: boolean) => void} look  at the close-up, or at the whole vine
 * @property {(where: Way) => void} go  to another position
 * @property {(by: 1 | -1) => void} step  to another piece
 *
 * @typedef {"first" | "last" | -1 | 1} Way
 *
 * @typedef {object} View
 * @property {readonly number[]} states
 * @property {number} position
 * @property {number} piece
 * @property {boolean} near
 * @property {boolean} closer
 * @property {boolean} lookBack
 * @property {boolean} tying  whether canes are being tied, so that nothing is cut
 */

/** @type {Record<string, Way>} */
const KEYS = { ArrowLeft: -1, ArrowRight: 1, Home: "first", End: "last" };
/** @type {Record<string, 1 | -1>} */
const PIECE_KEYS = { ArrowUp: -1, ArrowDown: 1 };

export class VineViews {
  /**
   * @param {SVGSVGElement} svg
   * @param {Sheet} sheet
   * @param {import("./words.mjs").Words} words
   * @param {string} id  unique on the page
   * @param {ViewActions} actions
   */
  constructor(svg, sheet, words, id, actions) {
    this.sheet = sheet;
    this.words = words;
    this.actions = actions;
    this.near = new Stage(copyOf(svg, `${id}-near`), sheet, "pw-stage-near");
    this.whole = new Stage(svg, sheet, "pw-stage-whole");
    /** The view that the close-up shows; with one view it is always the first. */
    this.side = this.whole.drawing.views[0] ?? "";
    this.framed = "";
    const wood = frameOfWood(this.whole.drawing);
    this.wood = wood;
    this.whole.show(wood);
    this.near.drawing.svg.classList.add("pw-close-up");
    this.near.root.setAttribute("role", "group");
    this.near.root.tabIndex = 0;
    this.note = element("p", { class: "pw-looking-back" }, words.say("look-back.note"));
    this.hint = element("p", { class: "pw-hint" });
    this.goal = goalWords(sheet, words, "hint");
    this.wholeButton = button(words.say("compare.whole"), () => actions.look(false), { class: "pw-see-whole" });
    this.nearButton = button(words.say("near.title"), () => actions.look(true), { class: "pw-see-near" });
    this.closer = button("", actions.closer, { class: "pw-see-closer" });
    // On a phone a sign stands for the words.
    this.closer.setAttribute("aria-label", words.say("closer"));
    this.closer.append(element("span", { class: "pw-see-words" }, words.say("closer")));
    this.tools = element("div", { class: "pw-see" }, ...this.layOutSides(), this.closer, this.nearButton, this.wholeButton);
    this.root = element("div", { class: "pw-glass" }, this.whole.root, this.near.root, this.note);
    // A tall vine gets a taller window; a low one would only get empty paper.
    this.root.style.setProperty("--pw-tall", (wood.height / wood.width).toFixed(2));
    this.bind();
  }

  /** A button to turn the close-up to the vine's other view, where there is one. */
  layOutSides() {
    const { views } = this.whole.drawing;
    if (views.length < 2) return [];
    this.turn = button(this.words.say("turn"), () => {
      this.lookFrom(views[(views.indexOf(this.side) + 1) % views.length]);
    });
    return [this.turn];
  }

  /** @param {string} side */
  lookFrom(side) {
    this.side = side;
    this.framed = "";
    if (this.view) this.update(this.view);
  }

  bind() {
    onTap(this.whole.root, (x, y) => {
      const { drawing } = this.whole;
      const { piece, view } = pieceNear(drawing, drawing.toMm(x, y));
      this.side = view;
      this.reframe();
      this.actions.choose(piece);
    });
    onTap(this.near.root, (x, y) => this.tapped(x, y));
    this.near.root.addEventListener("keydown", (event) => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      const [to, by] = [KEYS[event.key], PIECE_KEYS[event.key]];
      if (to === undefined && by === undefined) return;
      event.preventDefault();
      if (to !== undefined) this.actions.go(to);
      else this.actions.step(by);
    });
  }

  /**
   * A tap on the close-up: on a ring it cuts, on other wood it chooses that.
   *
   * @param {number} x
   * @param {number} y
   */
  tapped(x, y) {
    const { drawing } = this.near;
    const ring = drawing.cutPointAt(x, y);
    if (ring !== null && isOnRing(drawing, ring, x, y)) return this.actions.cut(ring.piece, ring.buds);
    const touched = this.view?.lookBack ? null : pieceAt(drawing, x, y, this.side);
    const other = touched !== null && touched !== this.view?.piece;
    if (ring !== null && !other) this.actions.cut(ring.piece, ring.buds);
    else if (touched !== null) this.actions.choose(touched);
    else this.actions.missed();
  }

  /**
   * Shows no more than what a cut, or taking one back, changes on the drawing that is seen: it is
   * drawn the sooner.
   *
   * @param {View} view
   * @param {Map<string, import("./types.mjs").WireSide>} tied
   */
  showWood(view, tied) {
    this.view = view;
    const { drawing } = view.near ? this.near : this.whole;
    const scale = drawing.pixelsPerMm();
    drawing.paint(view.states);
    showTied(drawing, tied, view.states);
    if (!view.near) return;
    this.offer(view, scale);
    this.frame(view);
  }

  /** @param {View} view */
  update(view) {
    this.view = view;
    const scale = this.near.drawing.pixelsPerMm();
    this.updateNames(view);
    this.note.hidden = !view.lookBack;
    this.whole.root.hidden = view.near;
    this.near.root.hidden = !view.near;
    const shown = view.lookBack ? uncut(this.sheet) : view.states;
    this.whole.drawing.paint(shown);
    this.near.drawing.paint(shown);
    this.near.drawing.svg.classList.toggle("pw-closest", view.closer);
    this.near.drawing.mark(view.position);
    this.near.drawing.point(view.piece);
    this.offer(view, scale);
    this.markWhole(view);
    this.frame(view);
  }

  /**
   * @param {View} view
   * @param {number} scale  of the close-up, pixels per mm
   */
  offer(view, scale) {
    this.near.drawing.offer(
      ({ piece, buds, view: side }) =>
        !view.lookBack &&
        !view.tying &&
        side === this.side &&
        piece === view.piece &&
        view.states[piece] > (buds ?? 0),
      scale,
    );
  }

  /** @param {View} view */
  markWhole(view) {
    const mark = { text: this.sheet.positions[view.position].name, kind: HERE };
    const feet = this.whole.drawing.views.flatMap(
      (side) => this.whole.drawing.foot(view.position, side) ?? [],
    );
    this.whole.setMarks(feet.map(({ x, y }) => ({ x, y, ...mark })));
  }

  /**
   * @param {Map<string, import("./types.mjs").WireSide>} tied
   * @param {readonly number[]} states
   */
  showTied(tied, states) {
    const tips = showTied(this.whole.drawing, tied, states);
    showTied(this.near.drawing, tied, states);
    const box = reaching(this.wood, tips);
    if (box.width !== this.whole.drawing.box.width) this.whole.show(box);
  }

  /** @param {View} view */
  updateNames(view) {
    const { name } = this.sheet.positions[view.position];
    const facts = { name, n: view.position + 1, of: this.sheet.positions.length };
    const hint = view.near ? "near.hint" : "whole.hint";
    const todo = this.words.say(view.tying ? "tie.hint" : hint);
    setText(this.hint, view.tying ? todo : `${todo} ${this.goal}`.trim());
    this.near.root.setAttribute("aria-label", this.words.say("near.label", facts));
    this.near.drawing.svg.setAttribute("aria-label", this.words.say("near.drawing", facts));
    this.closer.setAttribute("aria-pressed", `${view.closer}`);
    this.closer.hidden = !view.near;
    if (this.turn) this.turn.hidden = !view.near;
    // The button that was pressed gives its place to the other one, and the keyboard with it.
    const had = [this.wholeButton, this.nearButton].includes(/** @type {any} */ (document.activeElement));
    this.wholeButton.hidden = !view.near;
    this.nearButton.hidden = view.near;
    if (had) (view.near ? this.wholeButton : this.nearButton).focus();
  }

  /**
   * The close-up keeps still while cuts are made, so that the eye doesn't lose its place.
   *
   * @param {View} view
   */
  frame(view) {
    const wanted = `${view.position} ${view.closer} ${this.side}`;
    if (wanted === this.framed) return;
    this.framed = wanted;
    const { drawing } = this.near;
    this.near.show(frameOf(drawing, view.position, view.states, view.closer, this.side));
  }

  /** Looks for the best window again at the next update. */
  reframe() {
    this.framed = "";
  }

  destroy() {
    this.near.destroy();
    this.whole.show(this.whole.drawing.whole);
    this.whole.destroy();
  }
}
