/**
 * The pruning exercise of one drawn vine: where somebody stands in it and what is shown of it. Its
 * controls are made in bench.mjs, what they do to the wood in shears.mjs.
 *
 * What the page gives, inside `<div class="pw-exercise" data-pencilwood-exercise="SLUG">`:
 * - one inline `<svg class="pw-vine">` with cut points (see drawing.mjs for what is read of it);
 * - `<script type="application/json" class="pw-sheet">`: the scoring sheet (`Sheet`, types.mjs);
 * - `<script type="application/json" class="pw-words">`: everything the page says (`PageWords`);
 * - `<noscript>` or other fallback elements with class `pw-fallback`, hidden once this runs.
 * - `data-next` on its element, where a vine follows: the address of that vine's page.
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
import { element, setText } from "./dom.mjs";
import { headingsOf } from "./headings.mjs";
import { readPage, tellScore } from "./page_data.mjs";
import { asKept, freshWork, looksCloser, versionOf, workOf } from "./saved_work.mjs";
import { score } from "./scoring.mjs";
import { Shears } from "./shears.mjs";
import { Keeper } from "./storage.mjs";
import { isTying, sidesTied } from "./tying.mjs";
import { Words } from "./words.mjs";
import * as wood from "./wood.mjs";

/** @import {Bench} from "./bench.mjs" */

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
    this.workKey = `work:${this.sheet.case}`;
    this.work = freshWork(this.sheet);
    this.piece = 0;
    this.lookBack = false;
    this.id = `pwx${(made += 1)}`;
    /** @type {Bench | null} */
    this.bench = null;
    /** Leads to the next vine; without one of the page's own, whoever holds the exercise may set it. */
    this.onward = linkTo(root.dataset.next, this.words);
    this.later = new AfterFrame();
    this.shears = new Shears(this);
  }

  /** Makes the controls and takes up the work kept on this device. */
  bind() {
    this.home = { parent: this.svg.parentNode, next: this.svg.nextSibling };
    this.work = workOf(this.sheet, this.keeper.read(this.workKey)) ?? this.work;
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

  /** What is left of the vine, and the cuts that made it so. */
  wood() {
    return wood.replay(this.sheet, this.work.history);
  }

  /** Shows everything as it is now, and keeps it. */
  update() {
    const { work, sheet, bench, piece, lookBack } = this;
    this.later.drop();
    if (bench === null) return;
    const { states, cuts } = this.wood();
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
    const { states, cuts } = this.wood();
    if (!this.lookBack) this.bench?.views.showWood(viewOf(this, states), sidesTied(cuts));
    this.later.put(() => this.update());
  }

  /** Whether nothing is cut and no result was asked for, so that no work is lost with this vine. */
  get isUntouched() {
    return !this.work.done && this.wood().cuts.length === 0;
  }

  keep() {
    this.keeper.write(this.workKey, asKept(this.sheet, this.work));
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
    return wood.firstPiece(this.sheet, this.wood().states, position);
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

  /** @param {1 | -1} by */
  changePass(by) {
    if (this.asksFirst()) return;
    this.work.history = wood.changePass(this.work.history, by, this.sheet.cutting.passes);
    this.work.closer = looksCloser(this.work.history);
    this.openPass();
  }

  /** Whoever asked for a cut and goes on before it is made is asked again: no cut is lost unseen. */
  asksFirst() {
    const how = this.bench?.how;
    if (!how?.holdsCut) return false;
    this.tell(this.words.say("said.cut-waits"));
    how.show();
    return true;
  }

  openPass() {
    this.bench?.how.close();
    this.bench?.views.reframe();
    this.tell("");
    this.update();
    this.bench?.showPass();
  }

  finish() {
    if (this.asksFirst()) return;
    this.work.done = true;
    this.lookBack = false;
    this.update();
    const result = this.showResult(true);
    const which = { case: this.sheet.case, version: versionOf(this.sheet) };
    tellScore(this.root, this.keeper, which, result);
  }

  scored() {
    const { states, cuts } = this.wood();
    return score(this.sheet, states, cuts);
  }

  /** @param {boolean} goThere */
  showResult(goThere) {
    const result = this.scored();
    const { states, cuts } = this.wood();
    this.root.classList.add("pw-done");
    const panel = this.bench?.result();
    panel?.update(result, states, sidesTied(cuts), cuts.length);
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

/**
 * @param {string | undefined} href
 * @param {Words} words
 * @returns {HTMLElement | null}
 */
function linkTo(href, words) {
  if (href === undefined) return null;
  return element("a", { class: "pw-button pw-main", href }, words.say("result.next"));
}
