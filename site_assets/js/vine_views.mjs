/**
 * The two views a learner prunes in: the whole vine, where a tap chooses a position, and a
 * close-up of that position, where a tap cuts.
 */

import { button, element, setText } from "./dom.mjs";
import { copyOf } from "./drawing.mjs";
import { frameOf } from "./frames.mjs";
import { Stage } from "./stage.mjs";
import { onTap } from "./tap.mjs";
import { showTied } from "./tied_wood.mjs";
import { uncut } from "./wood.mjs";

/** @import {Sheet} from "./types.mjs" */

/**
 * @typedef {object} ViewActions
 * @property {(position: number) => void} select
 * @property {(piece: number, buds: number | null) => void} cut
 * @property {() => void} missed  a tap on the close-up that found no cut point
 * @property {() => void} closer
 *
 * @typedef {object} View
 * @property {readonly number[]} states
 * @property {number} position
 * @property {boolean} closer
 * @property {boolean} lookBack
 */

/** @type {Record<string, "first" | "last" | -1 | 1>} */
const KEYS = { ArrowLeft: -1, ArrowRight: 1, Home: "first", End: "last" };

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
    this.position = 0;
    /** The view that the close-up shows; with one view it is always the first. */
    this.side = "";
    this.near = new Stage(copyOf(svg, `${id}-near`), sheet, "pw-stage-near");
    this.whole = new Stage(svg, sheet, "pw-stage-whole");
    this.side = this.whole.drawing.views[0] ?? "";
    this.framed = "";
    this.near.drawing.svg.classList.add("pw-close-up");
    this.near.root.setAttribute("role", "group");
    this.near.root.tabIndex = 0;
    this.note = element("p", { class: "pw-looking-back" }, words.say("look-back.note"));
    this.heading = element("h3", { class: "pw-position-title" });
    this.root = this.layOut();
    this.bind();
  }

  layOut() {
    const { words } = this;
    this.select = element(
      "select",
      {},
      ...this.sheet.positions.map(({ name }, number) => element("option", { value: number }, name)),
    );
    const more = words.say("position.choose");
    this.previous = button(words.say("position.previous"), () => this.go(-1), { more });
    this.next = button(words.say("position.next"), () => this.go(1), { more });
    this.closer = button(words.say("closer"), this.actions.closer);
    const chooser = element("label", {}, words.say("position.choose"), " ", this.select);
    const nav = element(
      "div",
      { class: "pw-buttons pw-nav" },
      ...[this.previous, this.next, chooser, this.closer, ...this.layOutSides()],
    );
    const whole = element(
      "div",
      { class: "pw-view" },
      element("h3", {}, words.say("whole.title")),
      element("p", { class: "pw-hint" }, words.say("whole.hint")),
      this.whole.root,
    );
    const hint = element("p", { class: "pw-hint" }, words.say("near.hint"));
    const near = element("div", { class: "pw-view" }, this.heading, hint, nav, this.near.root);
    return element("div", { class: "pw-views" }, this.note, whole, near);
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
    this.select?.addEventListener("change", () => this.actions.select(Number(this.select?.value)));
    onTap(this.whole.root, (x, y) => {
      const { drawing } = this.whole;
      const { position, view } = drawing.positionNear(drawing.toMm(x, y));
      this.side = view;
      this.reframe();
      this.actions.select(position);
    });
    onTap(this.near.root, (x, y) => {
      const point = this.near.drawing.cutPointAt(x, y);
      if (point === null) this.actions.missed();
      else this.actions.cut(point.piece, point.buds);
    });
    this.near.root.addEventListener("keydown", (event) => {
      const key = KEYS[event.key];
      if (key === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      this.go(key);
    });
  }

  /** @param {"first" | "last" | -1 | 1} where */
  go(where) {
    const last = this.sheet.positions.length - 1;
    const targets = { first: 0, last, "-1": this.position - 1, 1: this.position + 1 };
    const to = targets[where];
    if (to >= 0 && to <= last) this.actions.select(to);
  }

  /** @param {View} view */
  update(view) {
    this.view = view;
    this.position = view.position;
    this.updateNames(view);
    this.note.hidden = !view.lookBack;
    const shown = view.lookBack ? uncut(this.sheet) : view.states;
    this.whole.drawing.paint(shown);
    this.near.drawing.paint(shown);
    this.near.drawing.mark(view.position);
    this.near.drawing.offer(
      ({ piece, buds, view: side }) =>
        !view.lookBack &&
        side === this.side &&
        this.sheet.pieces[piece].position === view.position &&
        view.states[piece] > (buds ?? 0),
    );
    const mark = { text: this.sheet.positions[view.position].name, kind: "pw-mark-here" };
    const feet = this.whole.drawing.views.flatMap(
      (side) => this.whole.drawing.foot(view.position, side) ?? [],
    );
    this.whole.setMarks(feet.map(({ x, y }) => ({ x, y, ...mark })));
    this.frame(view);
  }

  /**
   * @param {Map<string, import("./types.mjs").WireSide>} tied
   * @param {readonly number[]} states
   */
  showTied(tied, states) {
    for (const stage of [this.whole, this.near]) showTied(stage.drawing, tied, states);
  }

  /** @param {View} view */
  updateNames(view) {
    const { name } = this.sheet.positions[view.position];
    const facts = { name, n: view.position + 1, of: this.sheet.positions.length };
    setText(this.heading, this.words.say("position.title", facts));
    this.near.root.setAttribute("aria-label", this.words.say("near.label", facts));
    this.near.drawing.svg.setAttribute("aria-label", this.words.say("near.drawing", facts));
    if (this.select) this.select.value = `${view.position}`;
    if (this.previous) this.previous.disabled = view.position === 0;
    if (this.next) this.next.disabled = view.position === this.sheet.positions.length - 1;
    this.closer?.setAttribute("aria-pressed", `${view.closer}`);
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
    this.whole.destroy();
  }
}
