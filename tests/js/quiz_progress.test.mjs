import assert from "node:assert/strict";
import test from "node:test";

import { answered, freshProgress, handedIn, started, takeUpProgress } from "../../site_assets/js/quiz/progress.mjs";
import { ScopedKeeper } from "../../site_assets/js/quiz/scoped_keeper.mjs";
import { Shared } from "../../site_assets/js/quiz/shared.mjs";
import { Keeper } from "../../site_assets/js/storage.mjs";
import { ALL_RIGHT, smallQuiz } from "./fixtures/small_quiz.mjs";

const quiz = smallQuiz();
const begun = started(freshProgress(quiz), "test");
const takeUp = (kept) => takeUpProgress(quiz, kept);

/** A store in memory that can be told to fail. */
function shelf() {
  const kept = new Map();
  return {
    kept,
    full: false,
    getItem: (key) => kept.get(key) ?? null,
    setItem(key, value) {
      if (this.full) throw new Error("QuotaExceededError");
      kept.set(key, value);
    },
    removeItem: (key) => kept.delete(key),
  };
}

test("what was kept is taken up whole", () => {
  let progress = begun;
  for (const [id, answer] of Object.entries(ALL_RIGHT)) progress = answered(progress, id, answer);
  progress = { ...progress, at: 3, checked: ["count"], turn: 9, tries: 1 };
  assert.deepEqual(takeUp(JSON.parse(JSON.stringify(progress))), progress);
});

test("whatever doesn't fit is left out", () => {
  const kept = {
    ...begun,
    at: 99,
    answers: { count: 7, part: "L1a", unknown: 1 },
    checked: "count",
    tries: -4,
    date: 3,
  };
  const taken = takeUp(kept);
  assert.deepEqual(taken.answers, { part: "L1a" });
  assert.deepEqual([taken.at, taken.checked, taken.tries, taken.date], [4, [], 0, ""]);
  for (const bad of [null, 7, "x", [], {}]) assert.equal(takeUp(bad).mode, null);
});

test("a quiz with another version starts fresh, but tries still count", () => {
  const taken = takeUp({ ...begun, version: "old", tries: 2, answers: { count: 1 } });
  assert.deepEqual([taken.mode, taken.answers, taken.tries], [null, {}, 2]);
});

test("nothing is answered before the start, after the end, or once it was explained", () => {
  assert.deepEqual(answered(freshProgress(quiz), "count", 1).answers, {});
  assert.deepEqual(answered({ ...begun, done: true }, "count", 1).answers, {});
  assert.deepEqual(answered({ ...begun, checked: ["count"] }, "count", 1).answers, {});
  const once = answered(begun, "count", 1);
  assert.deepEqual(answered(once, "count", undefined).answers, {});
});

test("only tests that were not passed count as tries", () => {
  assert.equal(handedIn(begun, "2026-01-31", false).tries, 1);
  assert.equal(handedIn(begun, "2026-01-31", true).tries, 0);
  assert.equal(handedIn(started(begun, "practice"), "2026-01-31", false).tries, 0);
});

test("two pages answer in turn and lose nothing", () => {
  const store = shelf();
  const one = new Shared(new Keeper(() => store), "quiz:small", takeUp);
  const two = new Shared(new Keeper(() => store), "quiz:small", takeUp);
  one.change((progress) => started(progress, "test"));
  two.change((progress) => answered(progress, "count", 1));
  one.change((progress) => answered(progress, "part", "L1a"));
  assert.equal(two.refresh(), true);
  assert.deepEqual(two.value.answers, { count: 1, part: "L1a" });
  assert.equal(two.refresh(), false);
});

test("a page goes on alone when nothing is kept, is full, or is cleared under it", () => {
  const off = new Shared(
    new Keeper(() => {
      throw new Error("SecurityError");
    }),
    "quiz:small",
    takeUp,
  );
  off.change((progress) => started(progress, "test"));
  off.change((progress) => answered(progress, "count", 1));
  assert.deepEqual(off.value.answers, { count: 1 });
  const store = shelf();
  const full = new Shared(new Keeper(() => store), "quiz:small", takeUp);
  full.change((progress) => started(progress, "test"));
  store.full = true;
  full.change((progress) => answered(progress, "count", 1));
  full.change((progress) => answered(progress, "part", "L1a"));
  assert.deepEqual(full.value.answers, { count: 1, part: "L1a" });
  store.kept.clear();
  store.full = false;
  full.change((progress) => answered(progress, "order", [0, 1, 2]));
  assert.deepEqual(Object.keys(full.value.answers), ["count", "part", "order"]);
});

test("a quiz's vines are kept in its own corner", () => {
  const store = shelf();
  const corner = new ScopedKeeper(new Keeper(() => store), "quiz:small");
  corner.write("work:x", 1);
  assert.deepEqual([...store.kept.keys()], ["pencilwood:quiz:small:work:x"]);
  assert.equal(corner.read("work:x"), 1);
});
