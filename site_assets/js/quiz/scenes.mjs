/** Which view of a quiz is to be seen now: its door, a question, the last look, the result. */

import { HandInView } from "./hand_in_view.mjs";
import { openQuestions } from "./marking.mjs";
import { QuestionView } from "./question_view.mjs";
import { ResultView } from "./result_view.mjs";
import { startView } from "./start_view.mjs";

/** @import {Mode, Progress} from "./progress.mjs" */
/** @import {QuizRunner} from "./runner.mjs" */

/** @typedef {"quiz" | "hand-in" | "review"} Screen  what is shown besides how far a quiz has come */

/** @typedef {{root: HTMLElement, destroy?: () => void}} View */

/**
 * Names what has to be seen; as long as the name stays, so does the view.
 *
 * @param {Progress} progress
 * @param {Screen} screen
 * @param {number} reviewed  the question that is looked at again
 */
export function sceneOf({ mode, done, at, tries, turn, round }, screen, reviewed) {
  if (mode === null) return `start ${tries}`;
  if (done && screen === "review") return `review ${reviewed}`;
  if (done) return `result ${turn}`;
  return screen === "hand-in" ? `hand-in ${turn}` : `${mode} ${at} ${round}`;
}

/**
 * @param {QuizRunner} runner
 * @param {Progress} progress
 * @returns {View}
 */
export function viewOf(runner, progress) {
  const { data, words, screen } = runner;
  if (progress.mode === null) return doorOf(runner, progress);
  if (progress.done && screen !== "review") {
    const actions = { see: (/** @type {number} */ at) => runner.see(at), again: () => runner.toStart() };
    return new ResultView(data, words, progress, actions);
  }
  if (screen === "hand-in") {
    const actions = { go: (/** @type {number} */ at) => runner.go(at), finish: () => runner.finish() };
    return new HandInView(data, words, openQuestions(data, progress.answers), actions);
  }
  return questionOf(runner, progress.mode, progress.done, progress.at);
}

/**
 * @param {QuizRunner} runner
 * @param {Progress} progress
 */
function doorOf(runner, progress) {
  const actions = {
    start: (/** @type {Mode} */ mode) => runner.start(mode),
    allow: () => runner.change((now) => ({ ...now, tries: 0 }), true),
    forget: () => runner.forget(),
  };
  return { root: startView(runner.data, runner.words, progress, actions) };
}

/**
 * @param {QuizRunner} runner
 * @param {Mode} mode
 * @param {boolean} done
 * @param {number} at
 */
function questionOf(runner, mode, done, at) {
  const { data, words, root, exercises, corner, id } = runner;
  const shown = done ? runner.reviewed : at;
  return new QuestionView({ data, words, page: root, exercises, keeper: corner, id }, shown, { mode, done }, {
    changed: (answer) => runner.answer(data.questions[shown].id, answer),
    check: () => runner.check(shown),
    go: (to) => (done ? runner.see(to) : runner.go(to)),
    handIn: () => (done ? runner.toResult() : runner.askToHandIn()),
  });
}
