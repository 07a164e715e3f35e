/** The learner's vine with numbered marks, beside the best plan or the trainer's answer. */

import { button, check, element, radios, setText } from "./dom.mjs";
import { copyOf } from "./drawing.mjs";
import { frameOf } from "./frames.mjs";
import { Stage } from "./stage.mjs";
import { showTied } from "./tied_wood.mjs";
import { sidesTied } from "./tying.mjs";

/** @import {PageWords, Sheet, Where} from "./types.mjs" */
/** @import {Finding} from "./findings.mjs" */

export class CompareView {
  /**
   * @param {SVGSVGElement} svg
   * @param {Sheet} sheet
   * @param {PageWords} page
   * @param {import("./words.mjs").Words} words
   * @param {string} id  unique on the page
   */
  constructor(svg, sheet, page, words, id) {
    this.sheet = sheet;
    this.page = page;
    this.words = words;
    /** @type {readonly number[]} */
    this.states = [];
    this.other = "plan";
    /** @type {number | null} */
    this.position = null;
    this.mine = new Stage(copyOf(svg, `${id}-mine`), sheet, "pw-stage-compare");
    this.theirs = new Stage(copyOf(svg, `${id}-theirs`), sheet, "pw-stage-compare");
    this.otherName = element("figcaption");
    this.choice = radios(
      words.say("compare.with"),
      `${id}-with`,
      (page.answer === null ? ["plan"] : ["plan", "answer"]).map((value) => ({ value, text: words.say(`compare.${value}`) })),
      (value) => this.compareWith(value),
    );
    this.root = this.layOut();
  }

  layOut() {
    const { words } = this;
    this.wholeButton = button(words.say("compare.whole"), () => this.look(null));
    const more = words.say("position.choose");
    const previous = button(words.say("position.previous"), () => this.step(-1), { more });
    const next = button(words.say("position.next"), () => this.step(1), { more });
    const mine = element("figcaption", {}, words.say("compare.mine"));
    this.mine.drawing.svg.setAttribute("aria-label", words.say("compare.mine"));
    this.figures = element(
      "div",
      { class: "pw-figures" },
      element("figure", {}, mine, this.mine.root),
      element("figure", {}, this.otherName, this.theirs.root),
    );
    this.here = element("p", { class: "pw-hint", role: "status" });
    return element(
      "div",
      { class: "pw-compare", tabindex: -1 },
      this.choice,
      element("div", { class: "pw-buttons" }, this.wholeButton, previous, next),
      this.here,
      this.figures,
    );
  }

  /**
   * @param {readonly number[]} states
   * @param {readonly Finding[]} findings
   * @param {Map<string, import("./types.mjs").WireSide>} tied  where canes were tied
   */
  update(states, findings, tied) {
    this.states = states;
    this.mine.drawing.paint(states);
    showTied(this.mine.drawing, tied, states);
    this.mine.setMarks(
      findings.flatMap(({ must, places }) =>
        places.flatMap(({ number, broken }) => {
          const at = number === null ? null : this.placeOf(broken.where);
          const kind = must ? "pw-mark-must" : "pw-mark-should";
          return at === null ? [] : [{ ...at, text: `${number}`, kind }];
        }),
      ),
    );
    this.compareWith(this.other);
    this.look(null);
  }

  /** @param {string} other  "plan" or "answer" */
  compareWith(other) {
    this.other = other;
    check(this.choice, other);
    const { plan, answer } = this.page;
    const isPlan = answer === null || other === "plan";
    const shown = isPlan ? plan.states : answer.states.fine;
    this.theirs.drawing.paint(shown);
    showTied(this.theirs.drawing, sidesTied((isPlan ? plan : answer).cuts), shown);
    const name = this.words.say(`compare.${other}`);
    setText(this.otherName, name);
    this.theirs.drawing.svg.setAttribute("aria-label", name);
  }

  /** @param {1 | -1} by */
  step(by) {
    const last = this.sheet.positions.length - 1;
    const from = this.position ?? (by === 1 ? -1 : last + 1);
    this.look(Math.min(last, Math.max(0, from + by)));
  }

  /** @param {number | null} position  null shows the whole vine */
  look(position) {
    this.position = position;
    this.wholeButton?.setAttribute("aria-pressed", `${position === null}`);
    const { drawing } = this.mine;
    const full = this.sheet.pieces.map((piece) => Math.min(piece.states - 1, 6));
    const box = position === null ? drawing.whole : frameOf(drawing, position, full, false);
    this.figures?.classList.toggle("pw-zoomed", position !== null);
    for (const stage of [this.mine, this.theirs]) {
      stage.drawing.svg.classList.toggle("pw-close-up", position !== null);
      stage.show(box);
    }
    const name = position === null ? "" : this.sheet.positions[position].name;
    if (this.here) setText(this.here, name === "" ? "" : this.words.say("compare.here", { name }));
  }

  /**
   * @param {Where} where
   * @returns {{x: number, y: number} | null}
   */
  placeOf(where) {
    const { drawing } = this.mine;
    if (where.kind === "piece") {
      const piece = this.sheet.pieces.findIndex((one) => one.name === where.part);
      const own = drawing.cutPoints.filter((point) => point.piece === piece);
      const buds = this.states[piece] > 0 ? 1 : null;
      return own.find((point) => point.buds === buds) ?? own[0] ?? null;
    }
    const spots = (where.positions ?? []).map((name) => this.spotOf(name));
    if (where.kind === "stretch" && spots.length < 2) spots.push(...this.endsOf(where));
    const [a, b] = spots;
    return a == null || b == null ? null : { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  }

  /** @param {string} name */
  spotOf(name) {
    return this.mine.drawing.foot(this.sheet.positions.findIndex((one) => one.name === name));
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
      const foot = this.mine.drawing.foot(number);
      return foot && { x: foot.x + ends[end] - positions[number].y, y: foot.y };
    });
  }

  destroy() {
    this.mine.destroy();
    this.theirs.destroy();
  }
}
