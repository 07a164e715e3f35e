import assert from "node:assert/strict";
import test from "node:test";

import { dayNumber, isoDate } from "../../site_assets/js/quiz/days.mjs";
import {
  dueRules,
  freshMemory,
  GAPS_DAYS,
  nextVine,
  ofLevel,
  passedOver,
  remember,
  takeUpMemory,
} from "../../site_assets/js/quiz/review.mjs";

const RULES = ["crowded", "blank", "thin", "old"];
const VINES = Array.from({ length: 24 }, (_, n) => ({
  slug: `v${n}`,
  level: "easy",
  rules: [RULES[n % 4], RULES[(n + 1) % 4]],
}));
const VINE = { slug: "one", level: "easy", rules: ["thin", "old"] };
const never = () => 0;

test("a broken rule comes back after 1, 3 and 7 days, then is let go", () => {
  assert.deepEqual(GAPS_DAYS, [1, 3, 7]);
  let memory = remember(freshMemory(), VINE, ["thin"], 100);
  for (const day of [101, 104, 111]) {
    assert.deepEqual(dueRules(memory, day - 1), []);
    assert.deepEqual(dueRules(memory, day), ["thin"]);
    memory = remember(memory, VINE, [], day);
  }
  assert.deepEqual(memory.weak, {});
});

test("a success before its day is no step, a miss starts again", () => {
  let memory = remember(freshMemory(), VINE, ["thin"], 100);
  memory = remember(memory, VINE, [], 100);
  assert.deepEqual(dueRules(memory, 101), ["thin"]);
  memory = remember(memory, VINE, [], 101);
  memory = remember(memory, VINE, ["thin"], 104);
  assert.deepEqual(memory.weak.thin, { step: 0, due: 105, misses: 2 });
});

test("a vine that doesn't ask a rule says nothing about it", () => {
  const memory = remember(freshMemory(), VINE, ["thin"], 100);
  const other = { slug: "two", level: "easy", rules: ["old"] };
  assert.equal(remember(memory, other, [], 101).weak.thin.step, 0);
});

test("the weakest rules come first", () => {
  let memory = remember(freshMemory(), VINE, ["thin", "old"], 100);
  memory = remember(memory, VINE, ["old"], 101);
  assert.deepEqual(dueRules(memory, 103), ["old"]);
  assert.deepEqual(dueRules(memory, 104), ["old", "thin"]);
});

test("a vine that asks the rules that are due is chosen", () => {
  const memory = { ...freshMemory(), weak: { blank: { step: 0, due: 5, misses: 1 } } };
  for (let at = 0; at < 1; at += 0.09) {
    assert.ok(nextVine(memory, VINES, 5, () => at).rules.includes("blank"));
  }
});

test("a rule missed now returns after two other vines, not at once", () => {
  let memory = remember(freshMemory(), VINES[0], ["crowded"], 9);
  assert.ok(!nextVine(memory, VINES, 9, never).rules.includes("crowded"));
  memory = remember(memory, VINES[1], [], 9);
  memory = remember(memory, VINES[2], [], 9);
  memory = remember(memory, VINES[6], [], 9);
  assert.ok(nextVine(memory, VINES, 9, never).rules.includes("crowded"));
});

test("practice is mixed: no vine twice in a dozen, never the same rules twice running", () => {
  let memory = freshMemory();
  const seen = [];
  let state = 7;
  const random = () => (state = (state * 16807) % 2147483647) / 2147483647;
  for (let n = 0; n < 60; n += 1) {
    const vine = nextVine(memory, VINES, 9, random);
    assert.ok(!seen.slice(-12).includes(vine.slug));
    const before = VINES.find(({ slug }) => slug === seen[seen.length - 1]);
    if (before) assert.notDeepEqual(vine.rules, before.rules);
    seen.push(vine.slug);
    memory = remember(memory, vine, [], 9);
  }
  assert.ok(new Set(seen).size > 20);
});

test("the vine in hand doesn't come again, pruned or not, while there is another", () => {
  const two = VINES.slice(0, 2);
  for (const at of [0, 0.5, 0.999]) {
    for (const { slug } of two) {
      // Practised before or not, and with a better reason to come again or not.
      for (const memory of [freshMemory(), remember(freshMemory(), two[0], ["crowded"], 1)]) {
        assert.notEqual(nextVine(passedOver(memory, slug), two, 9, () => at).slug, slug);
      }
    }
  }
  assert.equal(nextVine(passedOver(freshMemory(), "one"), [VINE], 9).slug, "one");
  assert.deepEqual(passedOver(freshMemory(), ""), freshMemory());
});

test("practice goes on with a single vine", () => {
  let memory = freshMemory();
  for (let n = 0; n < 3; n += 1) {
    assert.equal(nextVine(memory, [VINE], 9).slug, "one");
    memory = remember(memory, VINE, [], 9);
  }
});

test("memory kept badly is read as far as it is one", () => {
  const good = remember(freshMemory(), VINE, ["thin"], 100);
  assert.deepEqual(takeUpMemory(JSON.parse(JSON.stringify(good))), good);
  const bad = { weak: { a: 1, b: { step: 9, due: 1, misses: 1 } }, recent: [1, "x"], today: { q: -1 } };
  assert.deepEqual(takeUpMemory(bad), { ...freshMemory(), recent: ["x"] });
  for (const kept of [null, "x", 3, [], { weak: 3, recent: {}, today: "no" }]) {
    assert.deepEqual(takeUpMemory(kept), freshMemory());
  }
});

test("a day ends at midnight where the learner is", () => {
  const late = new Date(2026, 0, 31, 23, 59);
  const early = new Date(2026, 1, 1, 0, 1);
  assert.equal(dayNumber(early) - dayNumber(late), 1);
  assert.equal(isoDate(late), "2026-01-31");
});

test("whoever has practised none begins with an easy vine, unless they chose a level", () => {
  const vines = ["hard", "easy", "middling"].map((level) => ({ slug: level, level, rules: [] }));
  const names = (/** @type {readonly {slug: string}[]} */ found) => found.map(({ slug }) => slug);
  const fresh = freshMemory();
  assert.deepEqual(names(ofLevel(vines, "all", fresh, "")), ["easy"]);
  assert.deepEqual(names(ofLevel(vines, "hard", fresh, "")), ["hard"]);
  assert.deepEqual(ofLevel(vines, "all", fresh, "easy"), vines, "they asked for another one");
  assert.deepEqual(ofLevel(vines, "all", remember(fresh, VINE, [], 100), ""), vines);
  const hard = vines.slice(0, 1);
  assert.deepEqual(ofLevel(hard, "all", fresh, ""), hard, "a handbook without easy ones");
});
