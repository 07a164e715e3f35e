/**
 * The pruning exercise: one class for one drawn vine, all of its controls made here.
 *
 * What the page gives, inside `<div class="pw-exercise" data-pencilwood-exercise="SLUG">`:
 * - one inline `<svg class="pw-vine">` with cut points (see drawing.mjs for what is read of it);
 * - `<script type="application/json" class="pw-sheet">`: the scoring sheet (`Sheet`, types.mjs);
 * - `<script type="application/json" class="pw-words">`: everything the page says (`PageWords`);
 * - `<noscript>` or other fallback elements with class `pw-fallback`, hidden once this runs.
 * `<` inside the JSON must be written `\u003c`. The exercise uses headings h3 and h4.
 *
 * What it gives back: a `pencilwood:scored` event on the root (it bubbles; `detail` is
 * `{case, version, score, cutting, passed}`), and the same under `pencilwood:score:SLUG` in
 * localStorage; `pencilwood:work:SLUG` keeps unfinished work.
 *
 * Keyboard. Everything is a native control in reading order. Each row names its test.
 *   Tab            to the next control; the close-up can be reached too  (test: tab)
 *   Left, Right    in the close-up: previous or next position            (test: left-right)
 *   Home, End      in the close-up: first or last position               (test: home-end)
 *   Enter, Space   press a button, open or close the measures            (test: enter-space)
 *   Up, Down       in a group of choices: choose another                 (test: up-down)
 */

import { CompareView } from "./compare_view.mjs";
import { element, setText } from "./dom.mjs";
import { HistoryPanel } from "./history_panel.mjs";
import { HowPanel } from "./how_panel.mjs";
import { MeasuresPanel } from "./measures_panel.mjs";
import { readPage, tellScore } from "./page_data.mjs";
import { PieceList } from "./piece_list.mjs";
import { ResultPanel } from "./result_panel.mjs";
import { freshWork, takeUp, versionOf } from "./saved_work.mjs";
import { budsKept, score } from "./scoring.mjs";
import { StepPanel } from "./step_panel.mjs";
import { Keeper } from "./storage.mjs";
import { sidesTied, tieOf } from "./tying.mjs";
import { VineViews } from "./vine_views.mjs";
import { Words } from "./words.mjs";
import * as wood from "./wood.mjs";

/** @import {DoneCut, WireSide} from "./types.mjs" */

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
    this.version = versionOf(this.sheet);
    this.workKey = `work:${this.sheet.case}`;
    this.work = freshWork(this.sheet);
    this.lookBack = false;
    made += 1;
    this.id = `pwx${made}`;
  }

  /** Makes the controls and takes up the work kept on this device. */
  bind() {
    this.home = { parent: this.svg.parentNode, next: this.svg.nextSibling };
    const kept = /** @type {{version?: string, work?: unknown} | null} */ (
      this.keeper.read(this.workKey)
    );
    if (kept?.version === this.version) this.work = takeUp(this.sheet, kept.work);
    this.said = element("p", { class: "pw-said", role: "status" });
    this.unsaved = element("p", { class: "pw-hint" }, this.words.say("not-saved"));
    this.makePanels();
    this.built = element("div", { class: "pw-built" });
    for (const part of [this.prune, this.result?.root]) if (part) this.built.append(part);
    this.root.append(this.built);
    this.root.classList.add("pw-live");
    this.update();
    if (this.work.done) this.showResult(false);
  }

  /** Takes the controls away again and leaves the page's own drawing as it was. */
  destroy() {
    this.views?.destroy();
    this.compare?.destroy();
    this.views?.whole.drawing.paint(wood.uncut(this.sheet));
    this.home?.parent?.insertBefore(this.svg, this.home.next);
    this.built?.remove();
    this.root.classList.remove("pw-live");
  }

  makePanels() {
    const { words, sheet, page, id, svg } = this;
    this.compare = new CompareView(svg, sheet, page, words, id);
    this.result = new ResultPanel(sheet, page, words, this.compare, {
      change: () => this.backToPruning(),
      tryAgain: () => this.tryAgain(),
    });
    this.steps = new StepPanel(words, sheet.cutting.passes, sheet.cutting.roughBuds[1], {
      changePass: (by) => this.changePass(by),
      shortenAll: () => this.shortenAll(),
      finish: () => this.finish(),
    });
    this.how = new HowPanel(words, id, (how) => {
      this.work.how = { ...this.work.how, ...how };
      this.update();
    });
    this.makeCuttingPanels();
    this.prune = element("div", { class: "pw-prune" });
    const panels = [this.steps, this.how, this.views, this.past, this.pieces, this.measures];
    this.prune.append(...panels.map((panel) => /** @type {{root: Element}} */ (panel).root));
    this.views?.root.after(/** @type {Node} */ (this.said));
    this.prune.append(this.steps.footer.root, /** @type {Node} */ (this.unsaved));
  }

  makeCuttingPanels() {
    const { words, sheet, page, id, svg } = this;
    /** @type {(piece: number, buds: number | null) => void} */
    const cut = (piece, buds) => this.cut(piece, buds);
    this.views = new VineViews(svg, sheet, words, id, {
      select: (position) => this.select(position),
      cut,
      missed: () => this.tell(words.say("said.missed")),
      closer: () => this.lookCloser(),
    });
    this.pieces = new PieceList(sheet, page, words, {
      ...{ cut, tie: this.tie },
      point: (piece) => this.views?.near.drawing.point(piece),
    });
    this.past = new HistoryPanel(words, {
      undo: () => this.travel(wood.undo(this.work.history), "said.undone"),
      redo: () => this.travel(wood.redo(this.work.history, sheet.cutting.passes[0]), "said.redone"),
      lookBack: () => this.toggleLookBack(),
      startAgain: () => this.travel(wood.startAgain(this.work.history, sheet.cutting.passes[0]), "said.again"),
    });
    this.measures = new MeasuresPanel(words, (open) => {
      this.work.measuresOpen = open;
      this.keep();
    });
  }

  /** Shows everything as it is now, and keeps it. */
  update() {
    const { work, sheet } = this;
    const { states, cuts } = wood.replay(sheet, work.history);
    this.steps?.update(work.history.pass, wood.isOutOfOrder(work.history, cuts));
    this.how?.update(work.how);
    const { position, closer } = work;
    this.views?.update({ states, position, closer, lookBack: this.lookBack });
    const tied = sidesTied(cuts);
    this.views?.showTied(this.lookBack ? new Map() : tied, states);
    this.pieces?.update(position, states, work.history.pass === "tie", tied);
    this.past?.update(work.history, this.lookBack);
    this.measures?.update(sheet, states, work.measuresOpen);
    this.keep();
  }

  keep() {
    this.keeper.write(this.workKey, { version: this.version, work: this.work });
    if (this.unsaved) this.unsaved.hidden = this.keeper.isKept;
  }

  /** @param {string} text */
  tell(text) {
    if (this.said) setText(this.said, text);
  }

  lookCloser() {
    this.work.closer = !this.work.closer;
    this.update();
  }

  toggleLookBack() {
    this.lookBack = !this.lookBack;
    this.update();
  }

  /** @param {number} position */
  select(position) {
    this.work.position = position;
    this.update();
  }

  /**
   * How cuts are made now; null, after asking, while tool or place isn't chosen.
   *
   * @returns {Pick<DoneCut, "pass" | "tool" | "stub"> | null}
   */
  howNow() {
    const { tool, stub } = this.work.how;
    if (tool !== null && stub !== null) return { pass: this.work.history.pass, tool, stub };
    this.how?.ask(this.work.how);
    return null;
  }

  /**
   * @param {number} piece
   * @param {number | null} buds
   */
  cut(piece, buds) {
    const how = this.howNow();
    if (how === null) return;
    const part = this.sheet.pieces[piece].name;
    const label = this.page.pieces[part]?.label ?? part;
    const what =
      buds === null ? this.words.say("cut.was-off") : this.words.count("cut.was-to", buds);
    this.addCuts([{ part, buds, ...how }], `${label} ${what}.`);
  }

  /** @type {(piece: number, side: WireSide) => void} */
  tie = (piece, side) => {
    const part = this.sheet.pieces[piece].name;
    const label = this.page.pieces[part]?.label ?? part;
    this.addCuts([tieOf(part, side)], `${label} ${this.words.say(`tie.was.${side}`)}.`);
  };

  shortenAll() {
    const how = this.howNow();
    if (how === null) return;
    const { states } = wood.replay(this.sheet, this.work.history);
    const cuts = wood.shortenAll(this.sheet, states, this.sheet.cutting.roughBuds[1], how);
    if (cuts.length === 0) return this.tell(this.words.say("said.none-long"));
    this.views?.reframe();
    this.addCuts(cuts, this.words.count("said.shortened", cuts.length));
  }

  /**
   * @param {DoneCut[]} cuts
   * @param {string} told
   */
  addCuts(cuts, told) {
    const before = wood.replay(this.sheet, this.work.history);
    const late = wood.isOutOfOrder(this.work.history, before.cuts);
    this.work.history = wood.addCuts(this.work.history, cuts);
    this.lookBack = false;
    this.update();
    const order = late ? ` ${this.words.say("said.out-of-order")}` : "";
    this.tell(`${told} ${this.budsLeft()}${order}`);
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
    this.update();
    this.tell(`${this.words.say(told)} ${this.budsLeft()}`);
  }

  /** @param {1 | -1} by */
  changePass(by) {
    this.work.history = wood.changePass(this.work.history, by, this.sheet.cutting.passes);
    // The rough pass looks at whole canes, the later ones at their lowest buds.
    this.work.closer = this.work.history.pass !== "rough";
    this.views?.reframe();
    this.update();
    this.steps?.heading.focus();
  }

  finish() {
    this.work.done = true;
    this.lookBack = false;
    this.update();
    const result = this.showResult(true);
    const which = { case: this.sheet.case, version: this.version };
    tellScore(this.root, this.keeper, which, result);
  }

  /** @param {boolean} goThere */
  showResult(goThere) {
    const { states, cuts } = wood.replay(this.sheet, this.work.history);
    const result = score(this.sheet, states, cuts);
    this.root.classList.add("pw-done");
    this.result?.update(result, states, sidesTied(cuts));
    if (goThere) this.result?.heading.focus();
    return result;
  }

  backToPruning() {
    this.work.done = false;
    this.root.classList.remove("pw-done");
    this.views?.reframe();
    this.update();
    this.steps?.heading.focus();
  }

  tryAgain() {
    this.work.history = wood.startAgain(this.work.history, this.sheet.cutting.passes[0]);
    this.backToPruning();
    this.tell(this.words.say("said.again"));
  }
}
