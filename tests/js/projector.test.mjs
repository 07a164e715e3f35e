/** The arithmetic of the page for a room. */

import assert from "node:assert/strict";
import { test } from "node:test";

import { rowsOfNames, turnOf } from "../../site_assets/js/name_rows.mjs";
import { boxAround, centred, clearOfTrunk, fannedOut, insideOf } from "../../site_assets/js/room_places.mjs";
import { casesOf } from "./fixtures/alike.mjs";

const WHOLE = { x: -1000, y: -1500, width: 2200, height: 900 };

test("a step about no place, or about many, shows the whole vine", () => {
  assert.equal(boxAround(WHOLE, []), WHOLE);
  const many = [-300, -100, 100, 300].map((x) => ({ x, y: -900 }));
  assert.equal(boxAround(WHOLE, many), WHOLE);
});

test("a step about one place shows it in the middle, larger", () => {
  const box = boxAround(WHOLE, [{ x: 400, y: -900 }]);
  assert.equal(box.x + box.width / 2, 400);
  assert.ok(box.width < WHOLE.width / 2);
});

test("a place whose shoots hang shows with its name above and its wood below", () => {
  const foot = { x: 400, y: WHOLE.y + 250 };
  const box = boxAround(WHOLE, [foot]);
  assert.ok(box.y < foot.y - 52);
  assert.ok(box.y + box.height > foot.y + 200);
});

test("places too far apart show the whole vine", () => {
  assert.equal(boxAround(WHOLE, [{ x: -900, y: -900 }, { x: 1000, y: -900 }]), WHOLE);
});

test("names that would cover each other go into rows", () => {
  const names = [0, 50, 100, 400].map((x, n) => ({ x, text: `L${n + 1}` }));
  assert.deepEqual(rowsOfNames(names, 60), [0, 1, 0, 0]);
  assert.deepEqual(rowsOfNames(names, 20), [0, 0, 0, 0]);
});

test("of two names straight below their places the one nearer the head is first", () => {
  const names = [-100, -50].map((x, n) => ({ x, text: `L${2 - n}`, turn: turnOf(x, x) }));
  assert.deepEqual(rowsOfNames(names, 60), [1, 0]);
});

test("names that the trunk pushes aside go below the others, that nearest the head lowest", () => {
  const names = [[-140, -140], [-80, -120], [-30, -120]].map(([own, x], n) => ({
    x, text: `L${3 - n}`, turn: turnOf(own, x),
  }));
  assert.deepEqual(rowsOfNames(names, 60), [0, 1, 2]);
});

for (const { why, own, names, order } of casesOf("turns_of_names.json")) {
  test(`rows are taken in turn as in the handbook's own drawings: ${why}`, () => {
    const turns = own.map((place, number) => turnOf(place, names[number]));
    assert.deepEqual([...own.keys()].sort((one, other) => turns[one] - turns[other]), order);
  });
}

test("large names keep clear of the trunk on either side", () => {
  assert.equal(clearOfTrunk(400, "R1", 60, 70), 400);
  const [right, left] = [clearOfTrunk(80, "R1", 60, 70), clearOfTrunk(-80, "L1", 60, 70)];
  assert.equal(left, -right);
  assert.ok(right - (2 * 60 * 0.62) / 2 > 70);
});

test("a drawing stands in the middle of its room", () => {
  const box = centred(WHOLE, { width: 1280, height: 450 }, 1280);
  // Twice as wide as it is high: 1100 of 1280 px at 0.5 px/mm.
  assert.deepEqual(box, { ...WHOLE, x: WHOLE.x - 90 / 0.5 });
});

test("words beside a drawing move it to the left, but never out of its room", () => {
  assert.equal(centred(WHOLE, { width: 1280, height: 450 }, 1150).x, WHOLE.x - 50 / 0.5);
  assert.equal(centred(WHOLE, { width: 1280, height: 450 }, 900).x, WHOLE.x);
  assert.equal(centred(WHOLE, { width: 1100, height: 900 }, 1100).x, WHOLE.x);
});

test("a name that the edge would cut moves into sight, one beyond it does not", () => {
  const shown = { x: -300, width: 600 };
  assert.ok(insideOf(shown, -290, "L3", 60) - (2 * 60 * 0.62) / 2 >= -300);
  assert.ok(insideOf(shown, 310, "R3", 60) + (2 * 60 * 0.62) / 2 <= 300);
  assert.equal(insideOf(shown, 0, "L1", 60), 0);
  assert.equal(insideOf(shown, 500, "R4", 60), 500);
});

test("names around a head stand apart and in sight, or as they were drawn", () => {
  const names = [257, 407, 556].map((away, n) => ({ away, text: `L${n + 1}` }));
  assert.deepEqual(fannedOut(names, 52, 900), [257, 407, 556]);
  const wide = 2 * 140 * 0.62;
  const apart = fannedOut(names, 140, 900);
  assert.ok(Math.abs(apart[0] - 257) < 0.001 && apart[1] - apart[0] > wide - 0.001 && apart[2] - apart[1] > wide - 0.001);
  const near = fannedOut(names, 40, 470);
  assert.ok(near[2] + 40 * 0.62 < 470.001);
  assert.ok(near[2] - near[1] > 2 * 40 * 0.62 - 0.001);
  assert.equal(near[0], 257);
  assert.deepEqual(fannedOut(names, 140, 300), [257, 407, 556]);
});
