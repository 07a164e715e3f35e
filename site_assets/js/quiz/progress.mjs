/** How far somebody has come in a quiz, and how that is kept and taken up again. */

import { isAnswer } from "./marking.mjs";

/** @import {Answer, QuizData} from "./quiz_data.mjs" */

/**
 * @typedef {"practice" | "test"} Mode  feedback at once, or at the end
 *
 * @typedef {object} Progress
 * @property {string} version  of the quiz
 * @property {number} turn  grows with every change, to tell which of two open pages is ahead
 * @property {number} round  grows with every start
 * @property {Mode | null} mode  null before a start
 * @property {number} at  number of the question that is shown, from 0
 * @property {Record<string, Answer>} answers
 * @property {string[]} checked  ids whose feedback was given in practice
 * @property {boolean} done
 * @property {string} date  on which it was handed in
 * @property {number} tries  tests handed in without a pass since a trainer last stepped in
 */

/**
 * @param {QuizData} data
 * @returns {Progress}
 */
export function freshProgress(data) {
  const counts = { turn: 0, round: 0, at: 0, tries: 0 };
  return { version: data.version, ...counts, mode: null, answers: {}, checked: [], done: false, date: "" };
}

/**
 * What was kept, checked piece by piece: whatever does not fit this quiz is left out.
 *
 * @param {QuizData} data
 * @param {unknown} kept
 * @returns {Progress}
 */
export function takeUpProgress(data, kept) {
  const fresh = freshProgress(data);
  if (typeof kept !== "object" || kept === null) return fresh;
  const was = /** @type {Record<string, unknown>} */ (kept);
  // Tries count for the quiz as a whole: a text that was mended gives no new ones.
  const tries = count(was.tries);
  if (was.version !== data.version) return { ...fresh, turn: count(was.turn), round: count(was.round), tries };
  const mode = was.mode === "practice" || was.mode === "test" ? was.mode : null;
  return {
    version: data.version,
    turn: count(was.turn),
    round: count(was.round),
    mode,
    at: Math.min(count(was.at), data.questions.length - 1),
    answers: answersOf(data, was.answers),
    checked: data.questions
      .map(({ id }) => id)
      .filter((id) => Array.isArray(was.checked) && was.checked.includes(id)),
    done: mode !== null && was.done === true,
    date: typeof was.date === "string" ? was.date : "",
    tries,
  };
}

/** @param {unknown} number */
function count(number) {
  return Number.isSafeInteger(number) && Number(number) > 0 ? Number(number) : 0;
}

/**
 * @param {QuizData} data
 * @param {unknown} kept
 */
function answersOf(data, kept) {
  /** @type {Record<string, Answer>} */
  const answers = {};
  if (typeof kept !== "object" || kept === null) return answers;
  for (const question of data.questions) {
    const answer = /** @type {Record<string, unknown>} */ (kept)[question.id];
    if (isAnswer(question, answer)) answers[question.id] = answer;
  }
  return answers;
}

/**
 * @param {Progress} progress
 * @param {string} id
 * @param {Answer | undefined} answer  undefined takes the answer back
 * @returns {Progress}
 */
export function answered(progress, id, answer) {
  // What was handed in, or was shown with its feedback, is not answered again.
  if (progress.done || progress.mode === null || progress.checked.includes(id)) return progress;
  const answers = { ...progress.answers };
  if (answer === undefined) delete answers[id];
  else answers[id] = answer;
  return { ...progress, answers };
}

/**
 * @param {Progress} progress
 * @param {Mode} mode
 * @returns {Progress}
 */
export function started(progress, mode) {
  const round = progress.round + 1;
  return { ...progress, round, mode, at: 0, answers: {}, checked: [], done: false, date: "" };
}

/**
 * @param {Progress} progress
 * @param {string} date
 * @param {boolean} passed
 * @returns {Progress}
 */
export function handedIn(progress, date, passed) {
  const failed = progress.mode === "test" && !passed;
  return { ...progress, done: true, date, tries: failed ? progress.tries + 1 : progress.tries };
}
