/**
 * Fills a page's record as full as it gets: `node pack_most.mjs FILE`. Each line of the file holds
 * `{sheets, quiz}`; prints the text that the learning system would keep, one JSON string a line.
 */

import { readFileSync } from "node:fs";

import { pack } from "../../site_assets/js/lms/suspended.mjs";
import { freshProgress } from "../../site_assets/js/quiz/progress.mjs";
import { freshWork, versionOf } from "../../site_assets/js/saved_work.mjs";
import { addCuts, start } from "../../site_assets/js/wood.mjs";

const HOW = { pass: "fine", tool: "loppers", stub: "close" };

/** Every bud by a cut of its own, what grows on older wood before that wood. */
function everyCut(sheet) {
  const outside = [...sheet.pieces].sort((a, b) => a.carries.length - b.carries.length);
  return outside.flatMap(({ name, kind, states }) => {
    const fewer = kind === "cane" ? Array.from({ length: states - 2 }, (_, n) => states - 2 - n) : [];
    return [...fewer, null].map((buds) => [{ part: name, buds, ...HOW }]);
  });
}

function fullWork(sheet) {
  const history = { ...everyCut(sheet).reduce(addCuts, start()), pass: "fine" };
  const how = { tool: "saw", stub: "right" };
  return { ...freshWork(), history, how, position: sheet.positions.length - 1, closer: true, done: true };
}

function longestAnswer(question) {
  if (question.kind === "choice") return question.choices.length - 1;
  if (question.kind === "order") return question.order;
  if (question.kind === "prune") return { passed: true, score: 100 };
  return question.targets.map(({ name }) => name).sort((a, b) => b.length - a.length)[0];
}

function fullProgress(quiz) {
  const ids = quiz.questions.map(({ id }) => id);
  const answers = Object.fromEntries(quiz.questions.map((one) => [one.id, longestAnswer(one)]));
  const counts = { turn: 99_999, round: 999, tries: 99, at: ids.length - 1 };
  return { ...freshProgress(quiz), ...counts, mode: "test", answers, checked: ids, done: true, date: "2026-01-05" };
}

function packed({ sheets, quiz }) {
  const scope = quiz === null ? "" : `quiz:${quiz.quiz}:`;
  const kept = quiz === null ? {} : { [`quiz:${quiz.quiz}`]: fullProgress(quiz) };
  for (const sheet of sheets) {
    kept[`${scope}work:${sheet.case}`] = { version: versionOf(sheet), work: fullWork(sheet) };
  }
  return pack({ sheets, quiz }, (key) => kept[key] ?? null);
}

for (const line of readFileSync(process.argv[2], "utf8").split("\n").filter(Boolean)) {
  process.stdout.write(`${JSON.stringify(packed(JSON.parse(line)))}\n`);
}
