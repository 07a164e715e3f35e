import assert from "node:assert/strict";
import test from "node:test";

import { measure } from "../../site_assets/js/measures.mjs";
import { smallVine } from "./fixtures/small_vine.mjs";

test("measures of a pruned vine", () => {
  assert.deepEqual(measure(smallVine(), [1, 2, 0, 2, 1]), {
    budsKept: 5,
    budsPerMetreTenths: 50,
    budsPerFootTenths: 15, // 5 buds x 304.8 mm / 1000 mm = 1.524
    spurs: 2, // the dead cane makes none
    smallestSpacing: 250,
    longestBlank: 240,
    tallies: new Map(),
  });
});

test("what the vine's form counts is counted over all wood that is left", () => {
  const counts = [[0, 1, 1], [0, 1, 0], [0, 1], [0, 0, 1], [0, 1]];
  const sheet = { ...smallVine(), tallies: [{ name: "short spurs", counts, steps: [] }] };
  assert.deepEqual(measure(sheet, [2, 2, 0, 2, 1]).tallies, new Map([["short spurs", 3]]));
});

test("a vine without spurs has no spacing, and one long blank", () => {
  const { smallestSpacing, longestBlank } = measure(smallVine(), [0, 0, 0, 0, 0]);
  assert.equal(smallestSpacing, null);
  assert.equal(longestBlank, 500);
});

test("tenths are rounded, halves up", () => {
  const sheet = { ...smallVine(), armLength: 800 };
  assert.equal(measure(sheet, [1, 1, 0, 0, 0]).budsPerMetreTenths, 13); // 1.25
});
