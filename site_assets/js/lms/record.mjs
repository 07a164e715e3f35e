/** What came of an exercise or a quiz, as elements of a SCORM 1.2 record. Nothing is told here. */

import { isRight } from "../quiz/marking.mjs";
import { letter, timeOfDay } from "./data_types.mjs";

/** @import {Answer, Question, QuizData} from "../quiz/quiz_data.mjs" */

/**
 * @typedef {{score: number, passed: boolean}} Outcome
 * @typedef {[name: string, value: string | number]} Entry
 * @typedef {{exercise: string, score: number, cutting: number, passed: boolean}} Pruned
 */

/** More right answers than this are not listed; half a list would be wrong. */
const MOST_PATTERNS = 10;

/**
 * The better one of two outcomes: a pass before no pass, then the higher score.
 *
 * @param {Outcome} now
 * @param {Outcome | null} before
 */
export function isBetter(now, before) {
  if (before === null) return true;
  if (now.passed !== before.passed) return now.passed;
  return now.score > before.score;
}

/**
 * @param {Outcome} outcome
 * @returns {Entry[]}
 */
export function outcomeEntries({ score, passed }) {
  return [
    ["cmi.core.score.raw", score],
    ["cmi.core.score.min", 0],
    ["cmi.core.score.max", 100],
    ["cmi.core.lesson_status", passed ? "passed" : "failed"],
  ];
}

/**
 * One try at a vine as one interaction.
 *
 * @param {Pruned} pruned
 * @param {number} number  of the interaction
 * @param {Date} now
 * @returns {Entry[]}
 */
export function exerciseEntries({ exercise, score, cutting, passed }, number, now) {
  const response = `vine ${score} cutting ${cutting}`;
  return interaction(number, now, { id: exercise, type: "performance", response, right: passed, weight: 1, patterns: [] });
}

/**
 * Each question of a quiz as one interaction.
 *
 * @param {QuizData} data
 * @param {Record<string, Answer>} answers
 * @param {number} number  of the first interaction
 * @param {Date} now
 * @returns {Entry[]}
 */
export function quizEntries(data, answers, number, now) {
  return data.questions.flatMap((question, at) => {
    const answer = answers[question.id];
    const right = isRight(question, answer);
    const weight = data.scored.includes(question.id) ? 1 : 0;
    const told = { id: question.id, right, weight, ...responseOf(question, answer) };
    return interaction(number + at, now, told);
  });
}

/**
 * @param {Question} question
 * @param {Answer | undefined} answer
 */
function responseOf(question, answer) {
  if (question.kind === "choice") {
    const right = question.choices.flatMap((choice, index) => (choice.right ? [letters([index])] : []));
    return { type: "choice", response: answer === undefined ? "" : letters([Number(answer)]), patterns: right };
  }
  if (question.kind === "order") {
    const order = Array.isArray(answer) ? letters(answer) : "";
    return { type: "sequencing", response: order, patterns: [letters(question.order)] };
  }
  if (question.kind === "part") {
    return { type: "fill-in", response: `${answer ?? ""}`, patterns: question.right };
  }
  const { score } = /** @type {{score?: number}} */ (answer ?? {});
  return { type: "performance", response: score === undefined ? "" : `vine ${score}`, patterns: [] };
}

/** @param {readonly number[]} indices */
function letters(indices) {
  const found = indices.map(letter);
  // Half an answer would be another answer.
  return found.some((one) => one === null) ? "" : found.join(",");
}

/**
 * @param {number} number
 * @param {Date} now
 * @param {{id: string, type: string, response: string, right: boolean, weight: number, patterns: string[]}} told
 * @returns {Entry[]}
 */
function interaction(number, now, { id, type, response, right, weight, patterns }) {
  const name = `cmi.interactions.${number}`;
  const listed = patterns.length > MOST_PATTERNS || patterns.includes("") ? [] : patterns;
  return [
    [`${name}.id`, id],
    [`${name}.type`, type],
    [`${name}.time`, timeOfDay(now)],
    [`${name}.weighting`, weight],
    ...listed.map((pattern, at) => /** @type {Entry} */ ([`${name}.correct_responses.${at}.pattern`, pattern])),
    ...(response === "" ? [] : [/** @type {Entry} */ ([`${name}.student_response`, response])]),
    [`${name}.result`, right ? "correct" : "wrong"],
  ];
}
