/**
 * The learner's vine with numbered marks; in the same frame, on request, the best plan or the
 * trainer's answer, so that the eye sees what changes.
 */

import { arrow, button, check, element, radios, setText } from "./dom.mjs";
import { copyOf } from "./drawing.mjs";
import { frameOf, reaching } from "./frames.mjs";
import { HERE, Stage } from "./stage.mjs";
import { showTied } from "./tied_wood.mjs";
import { sidesTied } from "./tying.mjs";

/** @import {PageWords, Sheet, Where, WireSide} from "./types.mjs" */
/** @import {Finding} from "./findings.mjs" */
/** @import {Mark} from "./stage.mjs" */

/** @typedef {Mark & {places: number[], piece: number}} Numbered  a mark, and where it belongs */

export class CompareView {
  /**
   * @param {SVGSVGElement} svg
   * @param {import("./drawing.mjs").Box} wood  the part of the drawing to show
   * @param {Sheet} sheet
   * @param {PageWords} page
   * @param {import("./words.mjs").Words} words
   * @param {string} id  unique on the page
   */
  constructor(svg, wood, sheet, page, words, id) {
    this.sheet = sheet;
    this.page = page;
    this.words = words;
    /** @type {readonly number[]} */
    this.states = [];
    /** @type {Map<string, WireSide>} */
    this.tied = new Map();
    /** @type {{x: number, y: number}[]}  of the canes that are shown tied */
    this.tips = [];
    /** @type {Numbered[]} */
    this.marks = [];
    /** Whose vine is shown: "mine", "plan" or "answer". */
    this.whose = "mine";
    /** @type {number | null} */
    this.position = null;
    /** Number of the remark that is looked at, empty for none. */
    this.chosen = "";
    /** @type {(number: string) => void} */
    this.touched = () => {};
    const copy = copyOf(svg, `${id}-result`);
    copy.setAttribute("viewBox", `${wood.x} ${wood.y} ${wood.width} ${wood.height}`);
    this.stage = new Stage(copy, sheet, "pw-stage-compare");
    this.stage.root.tabIndex = -1;
    const all = page.answer === null ? ["mine", "plan"] : ["mine", "plan", "answer"];
    this.choice = radios(
      words.say("compare.show"),
      `${id}-with`,
      all.map((value) => ({ value, text: words.say(`compare.${value}`) })),
      (value) => this.show(value),
    );
    this.root = this.layOut();
    // A click, not a tap: only after it the focus stays where it is sent.
    this.stage.root.addEventListener("click", ({ clientX, clientY }) => {
      const mark = this.stage.markAt(clientX, clientY);
      if (mark !== null) this.touched(mark.text);
    });
  }

  layOut() {
    const { words } = this;
    this.wholeButton = button(words.say("compare.whole"), () => this.look(null));
    const previous = arrow("back", words.say("position.previous"), () => this.step(-1));
    const next = arrow("on", words.say("position.next"), () => this.step(1));
    this.here = element("p", { class: "pw-hint pw-compare-here", role: "status" });
    return element(
      "div",
      { class: "pw-compare" },
      this.stage.root,
      element("div", { class: "pw-buttons pw-compare-look" }, previous, this.wholeButton, next, this.here),
      this.choice,
    );
  }

  /**
   * @param {readonly number[]} states
   * @param {readonly Finding[]} findings
   * @param {Map<string, WireSide>} tied  where canes were tied
   */
  update(states, findings, tied) {
    this.states = states;
    this.tied = tied;
    this.marks = findings.flatMap(({ must, places }) =>
      places.flatMap(({ number, broken }) => {
        const at = number === null ? null : this.placeOf(broken.where);
        const kind = must ? "pw-mark-must" : "pw-mark-should";
        if (at === null) return [];
        return [{ x: at.x, y: at.y, text: `${number}`, kind, ...this.belonging(broken.where) }];
      }),
    );
    this.lookAtMine(null);
  }

  /** @param {string} whose  "mine", "plan" or "answer" */
  show(whose) {
    this.paint(whose);
    const marks = [...this.marksInSight(), ...this.markHere()];
    if (this.position === null) this.stage.show(reaching(this.stage.drawing.whole, this.tips), marks);
    else this.stage.setMarks(marks);
    this.pointOut();
  }

  /**
   * Puts a vine's wood on the drawing; window and marks are for the caller to set.
   *
   * @param {string} whose  "mine", "plan" or "answer"
   */
  paint(whose) {
    this.whose = whose;
    check(this.choice, whose);
    const { drawing } = this.stage;
    const { states, tied } = this.shown();
    drawing.paint(states);
    this.tips = showTied(drawing, tied, states);
    drawing.svg.setAttribute("aria-label", this.words.say(`compare.${whose}`));
  }

  /**
   * The learner's own vine, which the remarks speak of.
   *
   * @param {number | null} position  null shows the whole vine
   * @param {number | null} [number]  the remark to look at
   */
  lookAtMine(position, number = null) {
    this.paint("mine");
    this.look(position, number);
  }

  /**
   * The numbers speak of the learner's own cuts. On the whole vine each piece has its first one,
   * which the list goes on from; from near all those of the place are there.
   */
  marksInSight() {
    const { position, chosen, marks: all } = this;
    if (this.whose !== "mine") return [];
    const isFirst = (/** @type {Numbered} */ mark) =>
      mark.piece < 0 || mark === all.find(({ piece }) => piece === mark.piece);
    const here = all.filter((one) => (position === null ? isFirst(one) : one.places.includes(position)));
    // The one that was asked for is served first.
    here.sort((one, other) => Number(other.text === chosen) - Number(one.text === chosen));
    return here.map((one) => (one.text === chosen ? { ...one, kind: `${one.kind} pw-mark-chosen` } : one));
  }

  /**
   * From near, the place in sight has its name: those below the arm are out of the window.
   *
   * @returns {Mark[]}
   */
  markHere() {
    if (this.position === null) return [];
    const { name } = this.sheet.positions[this.position];
    const foot = this.stage.drawing.foot(this.position);
    return foot === null ? [] : [{ x: foot.x, y: foot.y, text: name, kind: HERE }];
  }

  /** Lights up the wood of the remark that is looked at. */
  pointOut() {
    const pointed = this.marksInSight().find(({ text }) => text === this.chosen);
    this.stage.drawing.point(pointed?.piece ?? null);
  }

  /** @returns {{states: readonly number[], tied: Map<string, WireSide>}} */
  shown() {
    const { plan, answer } = this.page;
    if (this.whose === "mine") return { states: this.states, tied: this.tied };
    if (this.whose === "plan" || answer === null) return { states: plan.states, tied: sidesTied(plan.cuts) };
    return { states: answer.states.fine, tied: sidesTied(answer.cuts) };
  }

  /** @param {1 | -1} by */
  step(by) {
    const last = this.sheet.positions.length - 1;
    const from = this.position ?? (by === 1 ? -1 : last + 1);
    this.look(Math.min(last, Math.max(0, from + by)));
  }

  /**
   * @param {number | null} position  null shows the whole vine
   * @param {number | null} [number]  the remark to look at
   */
  look(position, number = null) {
    this.position = position;
    this.chosen = `${number ?? ""}`;
    this.wholeButton?.setAttribute("aria-pressed", `${position === null}`);
    const { drawing } = this.stage;
    const full = this.sheet.pieces.map((piece) => Math.min(piece.states - 1, 6));
    drawing.svg.classList.toggle("pw-close-up", position !== null);
    const box = position === null ? reaching(drawing.whole, this.tips) : frameOf(drawing, position, full, false);
    this.stage.show(box, [...this.marksInSight(), ...this.markHere()]);
    this.pointOut();
    const name = position === null ? "" : this.sheet.positions[position].name;
    if (this.here) setText(this.here, name === "" ? "" : this.words.say("compare.here", { name }));
  }

  /**
   * @param {Where} where
   * @returns {{x: number, y: number} | null}
   */
  placeOf(where) {
    const { drawing } = this.stage;
    if (where.kind === "piece") {
      const piece = this.sheet.pieces.findIndex((one) => one.name === where.part);
      return this.spotOn(piece, this.states[piece]);
    }
    const spots = (where.positions ?? []).map((name) => this.spotOf(name));
    if (where.kind === "stretch" && spots.length < 2) spots.push(...this.endsOf(where));
    const [a, b] = spots;
    return a == null || b == null ? null : { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  }

  /**
   * A spot on what is left of a piece, as far from its neighbours' feet as it reaches.
   *
   * @param {number} piece
   * @param {number} buds  that are left on it
   * @returns {{x: number, y: number} | null}
   */
  spotOn(piece, buds) {
    const own = this.stage.drawing.cutPoints.filter((point) => point.piece === piece);
    const foot = own.find((point) => point.buds === null) ?? own[0] ?? null;
    if (this.sheet.pieces[piece].kind === "old") return middleOf(this.stage.drawing.parts[piece][0]) ?? foot;
    return own.find((point) => point.buds === Math.ceil(buds / 2)) ?? foot;
  }

  /**
   * @param {Where} where
   * @returns {{places: number[], piece: number}}  numbers of its places and of its piece, -1 for none
   */
  belonging({ part, positions }) {
    const piece = this.sheet.pieces.findIndex((one) => one.name === part);
    const names = piece < 0 ? (positions ?? []) : [this.sheet.positions[this.sheet.pieces[piece].position].name];
    return { places: names.map((name) => this.sheet.positions.findIndex((one) => one.name === name)), piece };
  }

  /** @param {string} name */
  spotOf(name) {
    return this.stage.drawing.foot(this.sheet.positions.findIndex((one) => one.name === name));
  }

  /**
   * The arms' ends on the drawing, which the sheet gives without the head zone.
   *
   * @param {Where} where
   */
  endsOf(where) {
    const { positions, ends } = this.sheet;
    const wanted = where.end === undefined ? [0, 1] : [where.end === "left" ? 0 : 1];
    return wanted.map((end) => {
      const number = end === 0 ? 0 : positions.length - 1;
      const foot = this.stage.drawing.foot(number);
      return foot && { x: foot.x + ends[end] - positions[number].y, y: foot.y };
    });
  }

  destroy() {
    this.stage.destroy();
  }
}

/**
 * The middle of older wood, whose drawing is short and thick; null while it isn't shown.
 *
 * @param {Element | undefined} wood
 * @returns {{x: number, y: number} | null}
 */
function middleOf(wood) {
  if (!(wood instanceof SVGGraphicsElement)) return null;
  const { x, y, width, height } = wood.getBBox();
  return width + height === 0 ? null : { x: x + width / 2, y: y + height / 2 };
}
