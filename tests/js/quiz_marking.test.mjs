import assert from "node:assert/strict";
import test from "node:test";

import { isAnswer, isRight, lookAgain, markQuiz, openQuestions } from "../../site_assets/js/quiz/marking.mjs";
import { topicsOf } from "../../site_assets/js/quiz/quiz_data.mjs";
import { ALL_RIGHT, smallQuiz } from "./fixtures/small_quiz.mjs";

const quiz = smallQuiz();
const byId = Object.fromEntries(quiz.questions.map((one) => [one.id, one]));

test("all right is passed with 100", () => {
  const marks = markQuiz(quiz, ALL_RIGHT);
  assert.deepEqual([marks.points, marks.right, marks.mustRight, marks.passed], [100, 4, 1, true]);
  assert.deepEqual(marks.wrong, []);
});

test("a must-know question is no part of the score, and no score makes up for it", () => {
  const marks = markQuiz(quiz, { ...ALL_RIGHT, ladder: 0 });
  assert.deepEqual([marks.points, marks.enough, marks.safe, marks.passed], [100, true, false, false]);
  assert.deepEqual(marks.wrong, ["ladder"]);
});

test("the score is needed too, and what is open counts as wrong", () => {
  const marks = markQuiz(quiz, { ladder: 1, count: 1 });
  assert.deepEqual([marks.points, marks.enough, marks.safe, marks.passed], [25, false, true, false]);
  assert.deepEqual(openQuestions(quiz, { ladder: 1, count: 1 }), ["part", "order", "vine"]);
  assert.equal(markQuiz(quiz, { ladder: 1, count: 1, part: "L1a" }).passed, true);
});

test("points are rounded down: nobody is given what was not answered", () => {
  const three = { ...quiz, scored: ["count", "part", "order"] };
  assert.equal(markQuiz(three, { count: 1, part: "L1a" }).points, 66);
});

test("each kind knows right from wrong", () => {
  for (const [id, wrong] of Object.entries({
    count: 0,
    part: "L1m",
    order: [0, 1, 2],
    vine: { passed: false, score: 100 },
  })) {
    assert.equal(isRight(byId[id], ALL_RIGHT[id]), true, id);
    assert.equal(isRight(byId[id], wrong), false, id);
    assert.equal(isRight(byId[id], undefined), false, id);
  }
});

test("what is no answer is told from what is", () => {
  for (const [id, wrong] of Object.entries({
    count: [3, -1, 1.5, "1", null, {}],
    part: ["L9z", 0, null],
    order: [[0, 1], [0, 1, 1], [0, 1, 3], "201", null],
    vine: [{ passed: 1, score: 3 }, { passed: true }, null, true],
  })) {
    assert.equal(isAnswer(byId[id], ALL_RIGHT[id]), true);
    for (const one of wrong) assert.equal(isAnswer(byId[id], one), false, `${id} ${JSON.stringify(one)}`);
  }
});

test("what to look at again names each page once, the most needed first", () => {
  const links = lookAgain(quiz, ["count", "vine", "ladder"]);
  assert.deepEqual(links.map(({ href }) => href), ["r/too-many", "c/counting", "c/ladders"]);
  assert.deepEqual(lookAgain(quiz, []), []);
});

test("topics are the chapters, or without any the rules", () => {
  assert.deepEqual(topicsOf(quiz), ["Counting", "Ladders"]);
  const bare = { ...quiz, links: { ...quiz.links, chapters: {} } };
  assert.deepEqual(topicsOf(bare), ["Too many buds", "Order"]);
});
