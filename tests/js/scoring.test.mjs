import assert from "node:assert/strict";
import test from "node:test";

import { budsKept, score, spurs, stretches } from "../../site_assets/js/scoring.mjs";
import { smallVine } from "./fixtures/small_vine.mjs";

const sheet = smallVine();

/** Names of the messages, each with its points and its place. */
const told = (broken) =>
  broken.map(({ message, points, where }) => [
    message,
    points,
    where.part ?? [...(where.positions ?? []), where.end].filter(Boolean).join("-"),
  ]);

// A reason beside each row: states L1m, L1a, L1b, R1a, R2a; what is charged; score; passed.
const VINES = [
  // The plan: one short spur on each arm; the end stretches are short enough.
  [[1, 2, 0, 2, 0], [["too-long", 6, "R1-right"]], 98, true],
  // Dead buds are counted as buds, but make no spur.
  [[1, 2, 0, 1, 2], [["too-long", 6, "R1-right"]], 98, true],
  // A must rule keeps the score under the pass mark though few points are lost.
  [[1, 0, 3, 2, 0], [["too-many-buds", 10, "L1b"], ["too-long", 6, "R1-right"]], 79, false],
  // Old wood with nothing living above it is a bare end.
  [
    [1, 0, 0, 2, 0],
    [["bare-end", 4, "L1m"], ["too-long", 6, "left-R1"], ["too-long", 6, "R1-right"]],
    88,
    true,
  ],
  // A large cut face is a wound; what fell with it has none of its own.
  [
    [0, 0, 0, 2, 0],
    [["too-long", 6, "left-R1"], ["too-long", 6, "R1-right"], ["above-limit", 7, ""]],
    85,
    true,
  ],
  // Nothing left: the whole line is one blank.
  [
    [0, 0, 0, 0, 0],
    [["too-long", 6, ""], ["below-target", 12, ""], ["above-limit", 7, ""]],
    79,
    false,
  ],
];

for (const [states, expected, points, passed] of VINES) {
  test(`the wood left as ${states} has ${points} points`, () => {
    const result = score(sheet, states, []);
    const places = told(result.broken).map(([message, cost, where]) => [
      message,
      cost,
      where === "R1-left" ? "left-R1" : where,
    ]);
    assert.deepEqual(places, expected);
    assert.equal(result.score, points);
    assert.equal(result.passed, passed);
    assert.equal(result.lost, expected.reduce((sum, [, cost]) => sum + cost, 0));
  });
}

test("points never fall under 0", () => {
  const poor = { ...smallVine(), charges: sheet.charges.map((all) => all.map(([m, , f]) => [m, 90, f])) };
  assert.equal(score(poor, [1, 4, 6, 6, 2], []).score, 0);
});

test("neighbouring spurs are charged by their distance", () => {
  const close = smallVine();
  close.pieces[4].alive = 1;
  const { broken } = score(close, [1, 2, 0, 1, 1], []);
  const crowded = broken.filter(({ rule }) => rule === "crowded-spurs");
  assert.deepEqual(crowded, [
    {
      message: "too-close",
      rule: "crowded-spurs",
      must: false,
      points: 5,
      facts: { gap_mm: 70, least_mm: 80 },
      where: { kind: "pair", positions: ["R1", "R2"] },
    },
  ]);
});

test("totals are put back into the facts", () => {
  const { broken } = score(sheet, [1, 4, 6, 6, 2], []);
  const total = broken.find(({ message }) => message === "above-target");
  assert.deepEqual(total?.facts, { buds: 18, most: 5 });
});

test("buds, spurs and stretches are counted from the sheet", () => {
  assert.equal(budsKept(sheet, [1, 2, 0, 2, 1]), 5);
  assert.deepEqual(spurs(sheet, [1, 2, 0, 2, 1]), [0, 1]);
  assert.deepEqual(stretches(sheet, [1, 2, 0, 2, 0]).map(({ mm }) => mm), [210, 50, 240]);
});

const cut = (part, buds, pass, tool = "shears", stub = "right") => ({ part, buds, pass, tool, stub });

// A reason beside each row: the cuts in order; the messages charged; the cutting score.
const CUTS = [
  // As the trade does it: shorten, thin out, spur.
  [[cut("R1a", 5, "rough"), cut("L1b", null, "thinning-out"), cut("R1a", 2, "fine")], [], 100],
  // Taking wood off belongs to the thinning-out pass.
  [[cut("L1b", null, "rough")], ["not-for-this-pass"], 95],
  // Going back is charged as that alone, however often.
  [
    [cut("R1a", 2, "fine"), cut("L1b", null, "rough"), cut("L1a", 5, "rough")],
    ["earlier-pass", "earlier-pass"],
    90,
  ],
  // The stub is looked at in shortenings only.
  [[cut("L1b", null, "thinning-out", "shears", "close")], [], 100],
  [[cut("R1a", 2, "fine", "shears", "close")], ["at-the-bud"], 95],
  [[cut("R1a", 2, "fine", "shears", "long")], ["long-stub"], 96],
  // The tool goes by the thickness of the piece that is cut.
  [[cut("L1m", null, "thinning-out", "shears")], ["too-thick"], 92],
  [[cut("L1m", null, "thinning-out", "saw")], [], 100],
  // A saw tears thin wood, whether it is taken off or shortened, and each time anew.
  [[cut("L1b", null, "thinning-out", "saw")], ["clumsy"], 95],
  [[cut("R1a", 5, "rough", "saw"), cut("R1a", 2, "fine", "saw")], ["clumsy", "clumsy"], 90],
  // Loppers on thin wood are slow, and cut clean.
  [[cut("L1b", null, "thinning-out", "loppers")], [], 100],
];

for (const [cuts, messages, points] of CUTS) {
  test(`cutting ${cuts.map((one) => Object.values(one).join(" "))} has ${points} points`, () => {
    const { cutting } = score(sheet, [0, 0, 0, 0, 0], cuts);
    assert.deepEqual(cutting.broken.map(({ message }) => message), messages);
    assert.equal(cutting.score, points);
  });
}

test("a cut's thickness is put back into the facts", () => {
  const { cutting } = score(sheet, [0, 0, 0, 2, 0], [cut("L1m", null, "thinning-out")]);
  assert.deepEqual(cutting.broken[0].facts, { thickness_mm: 30 });
});

test("how it was cut plays no part in the vine's score", () => {
  const bad = [cut("R1a", 2, "fine", "saw", "close"), cut("L1b", null, "rough", "saw", "long")];
  assert.equal(score(sheet, [1, 2, 0, 2, 0], bad).score, score(sheet, [1, 2, 0, 2, 0], []).score);
});

test("wood that the sheet doesn't know is refused", () => {
  assert.throws(() => score(sheet, [1, 4, 6, 6, 2], [cut("Z9", 1, "fine")]), /no wood Z9/);
});
