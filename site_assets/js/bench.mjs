/**
 * The bench on which a vine is pruned: the drawing first, what to do and with what beside it, or
 * under it near the thumb; and the result. Makes the parts and puts them in reading order.
 */

import { CompareView } from "./compare_view.mjs";
import { element } from "./dom.mjs";
import { HistoryPanel } from "./history_panel.mjs";
import { HowPanel } from "./how_panel.mjs";
import { MeasuresPanel } from "./measures_panel.mjs";
import { PieceList } from "./piece_list.mjs";
import { PositionNav } from "./position_nav.mjs";
import { ResultPanel } from "./result_panel.mjs";
import { StepPanel } from "./step_panel.mjs";
import { isTying } from "./tying.mjs";
import { VineViews } from "./vine_views.mjs";

/** @import {Exercise} from "./exercise.mjs" */

const APART_PX = 6;

/**
 * @typedef {object} Parts
 * @property {StepPanel} steps
 * @property {HowPanel} how
 * @property {VineViews} views
 * @property {PositionNav} nav
 * @property {PieceList} pieces
 * @property {HistoryPanel} past
 * @property {MeasuresPanel} measures
 *
 * @typedef {Parts & Built} Bench
 *
 * @typedef {object} Built
 * @property {HTMLElement} root
 * @property {HTMLElement} said
 * @property {HTMLElement} unsaved
 * @property {() => ResultPanel} result  made, with a drawing of its own, when it is first shown
 * @property {() => void} destroy
 * @property {() => void} showDrawing  brings the drawing out from under what lies over it
 * @property {() => void} showPass  brings what is to do in this pass into sight, and the drawing
 */

/**
 * @param {Exercise} exercise
 * @returns {Bench}
 */
export function makeBench(exercise) {
  const parts = { ...pruningParts(exercise), ...woodParts(exercise) };
  const said = element("p", { class: "pw-said", role: "status" });
  const unsaved = element("p", { class: "pw-hint pw-unsaved" }, exercise.words.say("not-saved"));
  const { steps, how, views, nav, pieces, past, measures } = parts;
  const glass = element(
    "div",
    { class: "pw-view" },
    element("div", { class: "pw-over" }, said, views.hint, views.tools),
    views.root,
  );
  const sheet = element(
    "div",
    { class: "pw-hand" },
    element("div", { class: "pw-where" }, nav.root, pieces.list),
    element("div", { class: "pw-slot" }, pieces.root, how.question),
    steps.tools,
    element("div", { class: "pw-with" }, past.undo, how.root),
  );
  const prune = element(
    "div",
    { class: "pw-prune" },
    ...[steps.root, glass, sheet, measures.root, past.root, unsaved],
  );
  const root = element("div", { class: "pw-built" }, prune);
  /** @type {ResultPanel | null} */
  let shown = null;
  const result = () => {
    shown ??= makeResult(exercise, views);
    root.append(shown.root);
    return shown;
  };
  const destroy = () => {
    views.destroy();
    shown?.compare.destroy();
  };
  const showDrawing = () => {
    const lies = getComputedStyle(sheet).position === "sticky" ? sheet.offsetHeight + APART_PX : APART_PX;
    views.root.style.scrollMarginBottom = `${lies}px`;
    views.root.scrollIntoView({ block: "nearest" });
  };
  const showPass = () => {
    steps.heading.focus({ preventScroll: true });
    steps.root.scrollIntoView({ block: "nearest" });
    showDrawing();
  };
  return { ...parts, root, said, unsaved, result, destroy, showDrawing, showPass };
}

/**
 * What the drawings show of an exercise.
 *
 * @param {Exercise} exercise
 * @param {readonly number[]} states  the wood that is left
 * @returns {import("./vine_views.mjs").View}
 */
export function viewOf({ work, piece, lookBack }, states) {
  const { position, near, closer, history } = work;
  return { states, position, piece, near, closer, lookBack, tying: isTying(history) };
}

/** @param {Exercise} exercise */
function pruningParts(exercise) {
  const { words, sheet, headings } = exercise;
  return {
    steps: new StepPanel(words, headings, sheet.cutting.passes, sheet.cutting.roughBuds[1], {
      changePass: (by) => exercise.changePass(by),
      shortenAll: () => exercise.shears.shortenAll(),
      finish: () => exercise.finish(),
    }),
    how: new HowPanel(words, headings, {
      choose: (how) => {
        exercise.work.how = { ...exercise.work.how, ...how };
        exercise.update();
      },
      opened: (open) => exercise.root.classList.toggle("pw-asking", open),
      holds: (waiting) => exercise.bench?.views.near.drawing.hold(waiting?.at ?? null),
    }),
    past: new HistoryPanel(words, {
      undo: () => exercise.shears.undo(),
      redo: () => exercise.shears.redo(),
      lookBack: () => exercise.toggleLookBack(),
      startAgain: () => exercise.shears.startAgain(),
    }),
    measures: new MeasuresPanel(sheet, words, (open) => {
      exercise.work.measuresOpen = open;
      exercise.keep();
    }),
  };
}

/** @param {Exercise} exercise */
function woodParts(exercise) {
  const { words, sheet, page, headings, id, svg } = exercise;
  /** @type {(piece: number) => void} */
  const choose = (piece) => exercise.choose(piece);
  /** @type {(piece: number, buds: number | null) => void} */
  const cut = (piece, buds) => exercise.shears.cut(piece, buds);
  /** @type {(piece: number, side: import("./types.mjs").WireSide) => void} */
  const tie = (piece, side) => exercise.shears.tie(piece, side);
  /** @type {(where: import("./vine_views.mjs").Way) => void} */
  const go = (where) => exercise.go(where);
  return {
    views: new VineViews(svg, sheet, words, id, {
      ...{ choose, cut, go },
      missed: () => {
        exercise.tell(words.say(isTying(exercise.work.history) ? "tie.missed" : "said.missed"));
      },
      closer: () => {
        exercise.work.closer = !exercise.work.closer;
        exercise.update();
      },
      look: (near) => exercise.look(near),
      step: (by) => exercise.step(by),
    }),
    nav: new PositionNav(sheet, words, headings, {
      go,
      select: (position) => choose(exercise.firstPiece(position)),
    }),
    pieces: new PieceList(sheet, page, words, headings, { choose, cut, tie }),
  };
}

/**
 * @param {Exercise} exercise
 * @param {VineViews} views
 */
function makeResult(exercise, views) {
  const { words, sheet, page, headings, id, svg } = exercise;
  const compare = new CompareView(svg, views.wood, sheet, page, words, id);
  const actions = { change: () => exercise.backToPruning(), tryAgain: () => exercise.tryAgain() };
  return new ResultPanel(sheet, page, words, headings, compare, actions, exercise.onward);
}
