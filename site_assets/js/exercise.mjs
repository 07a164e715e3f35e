/**
 * The pruning exercise: one class for one drawn vine, all of its controls made here (bench.mjs).
 *
 * What the page gives, inside `<div class="pw-exercise" data-pencilwood-exercise="SLUG">`:
 * - one inline `<svg class="pw-vine">` with cut points (see drawing.mjs for what is read of it);
 * - `<script type="application/json" class="pw-sheet">`: the scoring sheet (`Sheet`, types.mjs);
 * - `<script type="application/json" class="pw-words">`: everything the page says (`PageWords`);
 * - `<noscript>` or other fallback elements with class `pw-fallback`, hidden once this runs.
 * `<` inside the JSON must be written `\u003c`. The exercise uses headings h3 and h4; with
 * `data-heading="4"` on its element, h4 and h5.
 *
 * What it gives back: a `pencilwood:scored` event on the root (it bubbles; `detail` is
 * `{case, version, score, cutting, passed}`), and the same under `pencilwood:score:SLUG` in
 * localStorage; `pencilwood:work:SLUG` keeps unfinished work.
 *
 * Keyboard. Everything is a native control in reading order. Each row names its test.
 *   Tab            to the next control; the close-up can be reached too  (test: tab)
 *   Left, Right    in the close-up: previous or next position            (test: left-right)
 *   Home, End      in the close-up: first or last position               (test: home-end)
 *   Up, Down       in the close-up: previous or next piece of wood       (test: up-down)
 *   Enter, Space   press a button, open or close the measures            (test: enter-space)
 *   Escape         leave the question for tool or place, nothing is cut  (test: escape)
 */

import { AfterFrame } from "./after_frame.mjs";
import { makeBench, viewOf } from "./bench.mjs";
import { setText } from "./dom.mjs";
import { headingsOf } from "./headings.mjs";
import { readPage, tellScore } from "./page_data.mjs";
import { freshWork, looksCloser, takeUp, versionOf } from "./saved_work.mjs";
import { budsKept, score } from "./scoring.mjs";
import { Keeper } from "./storage.mjs";
import { isTying, sidesTied, tieOf } from "./tying.mjs";
import { Words } from "./words.mjs";
import * as wood from "./wood.mjs";

/** @import {Bench} from "./bench.mjs" */
/** @import {DoneCut, StubName, ToolName, WireSide} from "./types.mjs" */

let made = 0;

export class Exercise {
  /**
   * @param {HTMLElement} root
   * @param {Keeper} [keeper]
   */
  constructor(root, keeper = new Keeper()) {
    this.root = root;
    this.keeper = keeper;
    const { sheet, page, svg } = readPage(root);
    this.sheet = sheet;
    this.page = page;
    this.svg = svg;
    this.words = new Words(this.page);
    this.headings = headingsOf(root);
    this.version = versionOf(this.sheet);
    this.workKey = `work:${this.sheet.case}`;
    this.work = freshWork(this.sheet);
    this.piece = 0;
    this.lookBack = false;
    this.id = `pwx${(made += 1)}`;
    /** @type {Bench | null} */
    this.bench = null;
    this.later = new AfterFrame();
  }

  /** Makes the controls and takes up the work kept on this device. */
  bind() {
    this.home = { parent: this.svg.parentNode, next: this.svg.nextSibling };
    const kept = /** @type {{version?: string, work?: unknown} | null} */ (
      this.keeper.read(this.workKey)
    );
    if (kept?.version === this.version) this.work = takeUp(this.sheet, kept.work);
    this.piece = this.firstPiece(this.work.position);
    this.bench = makeBench(this);
    this.root.append(this.bench.root);
    this.root.classList.add("pw-live");
    this.update();
    if (this.work.done) this.showResult(false);
  }

  /** Takes the controls away again and leaves the page's own drawing as it was. */
  destroy() {
    this.later.finish();
    const { bench } = this;
    bench?.destroy();
    bench?.views.whole.drawing.paint(wood.uncut(this.sheet));
    this.home?.parent?.insertBefore(this.svg, this.home.next);
    bench?.root.remove();
    this.bench = null;
    this.root.classList.remove("pw-live", "pw-near", "pw-asking");
  }

  /** Shows everything as it is now, and keeps it. */
  update() {
    const { work, sheet, bench, piece, lookBack } = this;
    this.later.drop();
    if (bench === null) return;
    const { states, cuts } = wood.replay(sheet, work.history);
    const tied = sidesTied(cuts);
    const tying = isTying(work.history);
    // First what asks for sizes, while the page stands as it was last measured.
    bench.views.update(viewOf(this, states));
    bench.views.showTied(lookBack ? new Map() : tied, states);
    this.root.classList.toggle("pw-near", work.near);
    bench.steps.update(work.history.pass, wood.isOutOfOrder(work.history, cuts));
    bench.how.update(work.how, tying);
    bench.nav.update(work.position);
    bench.pieces.update(work.position, piece, states, tying, tied);
    bench.past.update(work.history, lookBack);
    bench.measures.update(sheet, states, work.measuresOpen);
    this.keep();
  }

  /** What was cut or given back is seen at once; all that hangs on it when that is on the glass. */
  showWood() {
    const { states, cuts } = wood.replay(this.sheet, this.work.history);
    if (!this.lookBack) this.bench?.views.showWood(viewOf(this, states), sidesTied(cuts));
    this.later.put(() => this.update());
  }

  keep() {
    this.keeper.write(this.workKey, { version: this.version, work: this.work });
    if (this.bench) this.bench.unsaved.hidden = this.keeper.isKept;
  }

  /** @param {string} text */
  tell(text) {
    if (this.bench) setText(this.bench.said, text);
  }

  toggleLookBack() {
    this.lookBack = !this.lookBack;
    this.update();
  }

  /** @param {boolean} near */
  look(near) {
    this.work.near = near;
    this.tell("");
    this.update();
    this.bench?.showDrawing();
  }

  /** @param {number} position */
  firstPiece(position) {
    return wood.firstPiece(this.sheet, wood.replay(this.sheet, this.work.history).states, position);
  }

  /** @param {number} piece */
  choose(piece) {
    this.bench?.how.close();
    this.piece = piece;
    this.work.position = this.sheet.pieces[piece].position;
    this.work.near = true;
    this.tell("");
    this.update();
    this.bench?.showDrawing();
  }

  /** @param {import("./vine_views.mjs").Way} where */
  go(where) {
    const last = this.sheet.positions.length - 1;
    const to = { first: 0, last, "-1": this.work.position - 1, 1: this.work.position + 1 }[where];
    if (to >= 0 && to <= last) this.choose(this.firstPiece(to));
  }

  /** @param {1 | -1} by */
  step(by) {
    const own = wood.piecesAt(this.sheet, this.work.position);
    this.choose(own[own.indexOf(this.piece) + by] ?? this.piece);
  }

  /**
   * Lets a cut be made once tool and place are chosen. What is taken off whole has no bud to keep
   * away from: the place is neither asked nor charged for.
   *
   * @param {boolean} shortens
   * @param {(how: Pick<DoneCut, "pass" | "tool" | "stub">) => void} cut
   */
  withHow(shortens, cut) {
    this.bench?.how.before(shortens, () => {
      const { tool, stub } = this.work.how;
      const pass = this.work.history.pass;
      cut({ pass, tool: /** @type {ToolName} */ (tool), stub: stub ?? /** @type {StubName} */ ("right") });
    });
  }

  /**
   * @param {number} piece
   * @param {number | null} buds
   */
  cut(piece, buds) {
    const { words, sheet } = this;
    const { states } = wood.replay(sheet, this.work.history);
    // The button of a cut that was made a moment ago.
    if (!wood.legalCuts(sheet, states, piece).includes(buds)) return;
    const what = buds === null ? words.say("cut.was-off") : words.count("cut.was-to", buds);
    this.withHow(buds !== null, (how) => {
      this.addCuts([{ part: sheet.pieces[piece].name, buds, ...how }], `${this.labelOf(piece)} ${what}.`);
    });
  }

  /** @param {number} piece */
  labelOf(piece) {
    const part = this.sheet.pieces[piece].name;
    return this.page.pieces[part]?.label ?? part;
  }

  /** @type {(piece: number, side: WireSide) => void} */
  tie = (piece, side) => {
    const told = `${this.labelOf(piece)} ${this.words.say(`tie.was.${side}`)}.`;
    this.addCuts([tieOf(this.sheet.pieces[piece].name, side)], told);
  };

  shortenAll() {
    this.withHow(true, (how) => {
      const { states } = wood.replay(this.sheet, this.work.history);
      const cuts = wood.shortenAll(this.sheet, states, this.sheet.cutting.roughBuds[1], how);
      if (cuts.length === 0) return this.tell(this.words.say("said.none-long"));
      this.bench?.views.reframe();
      this.addCuts(cuts, this.words.count("said.shortened", cuts.length));
    });
  }

  /**
   * @param {DoneCut[]} cuts
   * @param {string} told
   */
  addCuts(cuts, told) {
    const late = wood.isOutOfOrder(this.work.history, wood.replay(this.sheet, this.work.history).cuts);
    this.work.history = wood.addCuts(this.work.history, cuts);
    this.lookBack = false;
    this.showWood();
    this.tell(`${told} ${this.budsLeft()}${late ? ` ${this.words.say("said.out-of-order")}` : ""}`);
  }

  budsLeft() {
    const { states } = wood.replay(this.sheet, this.work.history);
    return this.words.count("said.buds-left", budsKept(this.sheet, states));
  }

  /**
   * @param {wood.History} history
   * @param {string} told  key of what is said
   */
  travel(history, told) {
    if (history === this.work.history) return;
    this.work.history = history;
    this.showWood();
    this.tell(`${this.words.say(told)} ${this.budsLeft()}`);
  }

  /** @param {1 | -1} by */
  changePass(by) {
    this.work.history = wood.changePass(this.work.history, by, this.sheet.cutting.passes);
    this.work.closer = looksCloser(this.work.history);
    this.openPass();
  }

  openPass() {
    this.bench?.how.close();
    this.bench?.views.reframe();
    this.tell("");
    this.update();
    this.bench?.steps.heading.focus();
  }

  finish() {
    this.work.done = true;
    this.lookBack = false;
    this.update();
    const result = this.showResult(true);
    tellScore(this.root, this.keeper, { case: this.sheet.case, version: this.version }, result);
  }

  /** @param {boolean} goThere */
  showResult(goThere) {
    const { states, cuts } = wood.replay(this.sheet, this.work.history);
    const result = score(this.sheet, states, cuts);
    this.root.classList.add("pw-done");
    const panel = this.bench?.result();
    panel?.update(result, states, sidesTied(cuts));
    if (goThere) panel?.heading.focus();
    return result;
  }

  backToPruning() {
    this.work.done = false;
    this.root.classList.remove("pw-done");
    this.openPass();
  }

  tryAgain() {
    this.work.history = wood.startAgain(this.work.history, this.sheet.cutting.passes[0]);
    this.work.near = false;
    this.backToPruning();
    this.tell(this.words.say("said.again"));
  }
}
