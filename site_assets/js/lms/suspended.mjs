/** All that a page keeps for its learner, in the one text that the learning system keeps. */

import { takeUpProgress } from "../quiz/progress.mjs";
import { asKept, versionOf, workOf } from "../saved_work.mjs";
import { PREFIX } from "../storage.mjs";
import { packWork, unpackWork } from "./packed_work.mjs";

/** @import {Progress} from "../quiz/progress.mjs" */
/** @import {Answer, QuizData} from "../quiz/quiz_data.mjs" */
/** @import {Sheet} from "../types.mjs" */

/** Changes when a record of before can't be read any more. */
const FORMAT = 1;
const MODES = /** @type {const} */ ([null, "practice", "test"]);

/**
 * What one page holds: the sheets of its vines, and its quiz where it is one.
 *
 * @typedef {{sheets: Sheet[], quiz: QuizData | null}} Held
 */

/**
 * @param {Held} held
 * @param {(key: string) => unknown} read  what the page keeps under a key
 * @returns {string}  ASCII only
 */
export function pack(held, read) {
  const works = held.sheets.map((sheet) => {
    const work = workOf(sheet, read(workKey(held, sheet)));
    return work === null ? 0 : packWork(sheet, work);
  });
  const quiz = held.quiz === null ? 0 : packProgress(held.quiz, read(quizKey(held.quiz)));
  const text = JSON.stringify([FORMAT, fingerprint(held), quiz, ...works]);
  return text.replace(/[^\x20-\x7e]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

/**
 * @param {Held} held
 * @param {string} text
 * @returns {Map<string, unknown>}  by key; empty when the text isn't ours, or of another vine
 */
export function unpack(held, text) {
  /** @type {Map<string, unknown>} */
  const found = new Map();
  const [format, version, quiz, ...works] = parsed(text);
  if (format !== FORMAT || version !== fingerprint(held)) return found;
  if (held.quiz !== null && Array.isArray(quiz)) {
    found.set(PREFIX + quizKey(held.quiz), unpackProgress(held.quiz, quiz));
  }
  held.sheets.forEach((sheet, number) => {
    const work = unpackWork(sheet, works[number]);
    if (work !== null) found.set(PREFIX + workKey(held, sheet), asKept(sheet, work));
  });
  return found;
}

/** @param {string} text */
function parsed(text) {
  try {
    const whole = JSON.parse(text);
    return Array.isArray(whole) ? whole : [];
  } catch {
    return [];
  }
}

/**
 * Names these very questions and vines.
 *
 * @param {Held} held
 */
function fingerprint({ sheets, quiz }) {
  return [quiz?.version ?? "", ...sheets.map(versionOf)].join(".");
}

/** @param {QuizData} quiz */
function quizKey(quiz) {
  return `quiz:${quiz.quiz}`;
}

/**
 * @param {Held} held
 * @param {Sheet} sheet
 */
function workKey({ quiz }, sheet) {
  return quiz === null ? `work:${sheet.case}` : `${quizKey(quiz)}:work:${sheet.case}`;
}

/**
 * @param {QuizData} data
 * @param {unknown} kept
 */
function packProgress(data, kept) {
  const { turn, round, mode, at, answers, checked, done, date, tries } = takeUpProgress(data, kept);
  const given = data.questions.map(({ id }) => packAnswer(answers[id]));
  const seen = data.questions.map(({ id }) => Number(checked.includes(id))).join("");
  return [turn, round, MODES.indexOf(mode), at, Number(done), date, tries, seen, given];
}

/** @param {Answer | undefined} answer */
function packAnswer(answer) {
  if (answer === undefined) return 0;
  if (typeof answer !== "object" || Array.isArray(answer)) return [answer];
  return [Number(answer.passed), answer.score];
}

/**
 * @param {QuizData} data
 * @param {unknown[]} packed
 * @returns {Progress}
 */
function unpackProgress(data, packed) {
  const [turn, round, mode, at, done, date, tries, seen, given] = packed;
  const answers = Object.fromEntries(
    data.questions.flatMap(({ id, kind }, number) => {
      const answer = Array.isArray(given) ? given[number] : 0;
      if (!Array.isArray(answer)) return [];
      const pruned = { passed: answer[0] === 1, score: answer[1] };
      return [[id, kind === "prune" ? pruned : answer[0]]];
    }),
  );
  const checked = data.questions.flatMap(({ id }, number) => (`${seen}`[number] === "1" ? [id] : []));
  const version = data.version;
  // Whatever doesn't fit this quiz is left out there.
  return takeUpProgress(data, {
    ...{ version, turn, round, at, date, tries, answers, checked },
    mode: MODES[Number(mode)] ?? null,
    done: done === 1,
  });
}
