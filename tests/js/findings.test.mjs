import assert from "node:assert/strict";
import test from "node:test";

import { byReason, byRule, byWords } from "../../site_assets/js/findings.mjs";

const broken = (rule, points, must = false, kind = "piece", part = "L1a") => ({
  rule,
  message: "m",
  points,
  must,
  facts: {},
  where: { kind, part },
});

test("must rules come first, then the weightiest, and places are numbered in that order", () => {
  const found = byRule([
    broken("light", 2),
    broken("total", 20, false, "vine"),
    broken("must", 1, true),
    broken("light", 3),
  ]);
  const told = found.map(({ rule, must, points, places }) => [
    rule,
    must,
    points,
    places.map(({ number }) => number),
  ]);
  assert.deepEqual(told, [
    ["must", true, 1, [1]],
    ["total", false, 20, [null]],
    ["light", false, 5, [2, 3]],
  ]);
});

test("cuts that are told the same are one line", () => {
  const of = (thickness_mm) => ({ ...broken("tool", 2), facts: { thickness_mm } });
  const cuts = [of(8), of(9), of(8)];
  const told = (tell) => byWords(cuts, tell).map(({ points, parts }) => [points, parts.length]);
  assert.deepEqual(told(({ facts }) => `${facts.thickness_mm} mm is too thick.`), [[4, 2], [2, 1]]);
  assert.deepEqual(told(() => "A saw tears."), [[6, 3]]);
  // Two rules that say the same stay two.
  assert.equal(byWords([broken("tool", 2), broken("stub", 2)], () => "Wrong.").length, 2);
});

test("neighbouring cuts with one reason are joined", () => {
  const cut = (part, buds, why) => ({ part, buds, pass: "fine", why });
  const groups = byReason([cut("L1a", 2, "x"), cut("R1a", 2, "x"), cut("R2a", 1, "x"), cut("R3a", 1, "y")]);
  assert.deepEqual(groups.map(({ parts, buds }) => [parts, buds]), [
    [["L1a", "R1a"], 2],
    [["R2a"], 1],
    [["R3a"], 1],
  ]);
});
