import assert from "node:assert/strict";
import test from "node:test";

import { combinationOf, lookUp, numberOf } from "../../site_assets/js/winters.mjs";

test("stories are numbered with the near cane first and the latest choice fastest", () => {
  assert.deepEqual(["nn", "nf", "fn", "ff"].map(numberOf), [0, 1, 2, 3]);
  assert.equal(numberOf(""), 0);
});

test("in a combination the last position's story changes fastest", () => {
  assert.equal(combinationOf(["n", "f"]), 1);
  assert.equal(combinationOf(["f", "n"]), 2);
  assert.equal(combinationOf(["nf", "ff"]), 1 * 4 + 3);
  assert.equal(combinationOf(["", ""]), 0);
});

test("what a winter comes to is looked up", () => {
  const winter = {
    scores: [100, 90, 80, 70],
    best: [7],
    rest: [0, 1, 0, 1],
    rests: [[], ["the whole vine"]],
    canes: [],
    at: [
      [
        [80, "8 cm", []],
        [160, "16 cm", ["R1 is high"]],
      ],
      [
        [90, "9 cm", []],
        [130, "13 cm", ["R2 is high"]],
      ],
    ],
  };
  const data = { positions: ["R1", "R2"], passMark: 80, limit: 130, winters: [winter], strings: {} };
  assert.deepEqual(lookUp(data, ["f", "f"]), {
    score: 70,
    best: 7,
    climb: "16 cm",
    within: 1,
    losses: ["R1 is high", "R2 is high", "the whole vine"],
  });
  assert.deepEqual(lookUp(data, ["n", "n"]).losses, []);
});
