import assert from "node:assert/strict";
import { test } from "node:test";

import { budGoal, goalWords } from "../../site_assets/js/bud_goal.mjs";
import { Words } from "../../site_assets/js/words.mjs";

const FREE = 0;
const COSTS = 1;
const TEXTS = {
  "exercise.goal.hint": "Goal: {goal} buds.",
  "exercise.goal.least": "at least {least}",
  "exercise.goal.most": "at most {most}",
  "exercise.goal.one": "{least}",
  "exercise.goal.range": "{least} to {most}",
};
const words = new Words(/** @type {any} */ ({ language: "en", units: "metric", strings: TEXTS }));

/** @param {[number | null, number][]} buds */
function sheet(buds) {
  return /** @type {any} */ ({ buds, charges: [[], [[0, 5, {}]]] });
}

/** @type {[string, [number | null, number][], object | null, string][]} */
const VINES = [
  ["a range", [[5, COSTS], [19, COSTS], [23, FREE], [null, COSTS]], { least: 20, most: 23 }, "Goal: 20 to 23 buds."],
  ["one number", [[9, COSTS], [10, FREE], [null, COSTS]], { least: 10, most: 10 }, "Goal: 10 buds."],
  ["none too many", [[9, COSTS], [null, FREE]], { least: 10, most: null }, "Goal: at least 10 buds."],
  ["none too few", [[12, FREE], [null, COSTS]], { least: 0, most: 12 }, "Goal: at most 12 buds."],
  ["rows side by side", [[3, COSTS], [5, FREE], [8, FREE], [null, COSTS]], { least: 4, most: 8 }, "Goal: 4 to 8 buds."],
  ["buds are not counted", [[null, FREE]], null, ""],
  ["each total costs", [[4, COSTS], [null, COSTS]], null, ""],
];

for (const [name, buds, goal, said] of VINES) {
  test(`the goal of a vine: ${name}`, () => {
    assert.deepEqual(budGoal(sheet(buds)), goal);
    assert.equal(goalWords(sheet(buds), words, "hint"), said);
  });
}
