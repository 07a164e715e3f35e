// Where names of places go on a small picture, from plain rectangles.

import assert from "node:assert/strict";
import { test } from "node:test";

import { asidesInRow } from "../../site_assets/js/drawn_names.mjs";
import { asideOffWood } from "../../site_assets/js/names_off_wood.mjs";
import { pushOut } from "../../site_assets/js/name_pushes.mjs";
import { asideOf } from "../../site_assets/js/moved_lines.mjs";
import { movesOf } from "../../site_assets/js/place_names.mjs";

const name = (left, top = 0) => ({ left, right: left + 20, top, bottom: top + 12 });
const down = (areas, taken = []) => movesOf(areas, taken, areas.map(() => 1));

const ROWS = [
  ["a name that would lie over the one before it goes a row down", [0, 10, 26, 60], [0, 12, 0, 0]],
  ["a third one goes two rows down", [0, 5, 10], [0, 12, 24]],
  ["a name without a free row is left out", [0, 2, 4, 6, 8, 60], [0, 12, 24, 36, null, 0]],
];

for (const [reason, lefts, moves] of ROWS) {
  test(reason, () => assert.deepEqual(down(lefts.map((left) => name(left))), moves));
}

test("names in rows of their own do not move each other", () => {
  assert.deepEqual(down([name(0), name(5, 12), name(5, 6)]), [0, 0, 20]);
});

test("what is taken already goes before all names", () => {
  assert.deepEqual(down([name(0), name(40)], [name(8)]), [12, 0]);
});

test("a name beside a mark of two rows that has names below it goes below them too", () => {
  const mark = { left: 0, right: 30, top: 0, bottom: 22 };
  assert.deepEqual(down([name(40, 24), name(25)], [mark]), [0, 36]);
});

test("where shoots hang, names go up, away from the wood", () => {
  assert.deepEqual(movesOf([name(0, 50), name(5, 50)], [], [-1, -1]), [0, -12]);
});

test("a name that may not move is left out where its place is taken", () => {
  assert.deepEqual(movesOf([name(0), name(5), name(30)], [], [0, 0, 0]), [0, null, 0]);
});

test("a name stands closer to a mark, which has an edge, than to another name", () => {
  assert.deepEqual(down([name(24)], [name(0)]), [0]);
  assert.deepEqual(down([name(0), name(24)]), [0, 12]);
  assert.deepEqual(down([name(21)], [name(0)]), [12]);
});

const LINES = [
  ["straight down where nothing stands", name(0), 24, [], 0],
  ["a little outward past the end of another name", name(0), 24, [{ left: -20, right: 11, top: 8, bottom: 20 }], 5],
  ["inward where the other name stands on the other side", name(0), 24, [{ left: 9, right: 40, top: 8, bottom: 20 }], -5],
  ["no line where a name stands all over the way", name(0), 24, [{ left: -20, right: 40, top: 8, bottom: 20 }], null],
  ["up where shoots hang, from the foot of the name", name(0, 50), -24, [{ left: 0, right: 20, top: 62, bottom: 70 }], 0],
];

for (const [reason, area, move, others, aside] of LINES) {
  test(`the line to a name that moved: ${reason}`, () => assert.equal(asideOf(area, move, others), aside));
}

test("a name goes no further below a mark than it must", () => {
  const mark = { left: 0, right: 30, top: 0, bottom: 14 };
  assert.deepEqual(down([name(25)], [mark]), [16]);
});

test("a name that the edge of the drawing would cut is left out instead", () => {
  const sight = { top: 0, bottom: 30 };
  assert.deepEqual(movesOf([name(0), name(5), name(10)], [], [1, 1, 1], sight), [0, 12, null]);
});

const NOTHING = () => false;
const lefts = (areas) => areas && areas.map((one) => one && one.left);

test("a name without room goes outward from a mark, and those further out make way in their order", () => {
  const isTaken = ({ left }) => left < 8;
  assert.deepEqual(lefts(pushOut(0, [name(0), name(20), name(60)], isTaken, [1, 1, 1], 5)), [8, 33, 60]);
  assert.deepEqual(lefts(pushOut(0, [name(0), name(-22)], ({ left }) => left > -8, [-1, -1], 5)), [-8, -33]);
});

test("no name goes past one nearer the head, or to the other side", () => {
  assert.equal(pushOut(1, [name(10), name(12)], ({ left }) => left > 20, [1, 1], 5), null);
  assert.deepEqual(lefts(pushOut(0, [name(0), name(30)], NOTHING, [1, -1], 5)), [0, 30]);
  assert.equal(pushOut(0, [name(0), name(30)], ({ left }) => left < 8, [1, -1], 5), null);
});

test("a name is left out rather than led far away from its place", () => {
  assert.equal(pushOut(0, [name(0)], ({ left }) => left < 41, [1], 5), null);
  assert.deepEqual(lefts(pushOut(0, [name(0)], ({ left }) => left < 40, [1], 5)), [40]);
});

const inRow = (...names) => asidesInRow(names.map(([middle, half]) => ({ middle, half })));

test("names beside a head stay in one row, those further out make way for a wide one", () => {
  assert.deepEqual(inRow([10, 7], [30, 7], [50, 7]), [0, 0, 0]);
  assert.deepEqual(inRow([-10, 12], [-30, 7], [-60, 7]), [0, -4, 0]);
  assert.deepEqual(inRow([10, 7], [28, 7], [-10, 7]), [0, 1, 0]);
  assert.deepEqual(inRow([50, 7], [30, 7], [10, 12]), [3, 4, 0]);
});

const cane = (from, to) => (area) => area.left < to && from < area.right;

test("a name goes off hanging wood, outward where both ways are as short, and over no other name", () => {
  assert.equal(asideOffWood(name(0), cane(30, 32), 1, []), 0);
  assert.equal(asideOffWood(name(0), cane(9, 11), 1, []), 11);
  assert.equal(asideOffWood(name(0), cane(9, 11), -1, []), -11);
  assert.equal(asideOffWood(name(0), cane(9, 11), 1, [name(33)]), -11);
  assert.equal(asideOffWood(name(0), cane(16, 40), 1, []), -4);
  assert.equal(asideOffWood(name(0), cane(-30, 50), 1, []), 0);
});
