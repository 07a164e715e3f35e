// Where the numbers of remarks go beside the wood they speak of, from plain spots and rectangles.

import assert from "node:assert/strict";
import { test } from "node:test";

import { placesOfMarks } from "../../site_assets/js/mark_places.mjs";

const NUMBER = { width: 24, height: 20 };
const WINDOW = { width: 300, height: 200 };
const spot = (left, top) => ({ left, top });
const places = (spots, words = [], window = WINDOW) => placesOfMarks(spots, NUMBER, window, words);
const apart = (one, other) => Math.abs(one.left - other.left) >= 24 || Math.abs(one.top - other.top) >= 20;

test("a number alone stands straight above what it speaks of", () => {
  assert.deepEqual(places([spot(150, 100)]), [{ left: 150, top: 76 }]);
});

test("at the edge of the window a number goes where it is whole", () => {
  const [corner] = places([spot(2, 2)]);
  assert.ok(corner.left >= 12 && corner.top >= 10);
});

test("a number leaves names free where it can", () => {
  const name = { left: 130, right: 170, top: 66, bottom: 86 };
  const [place] = places([spot(150, 100)], [name]);
  assert.ok(Math.abs(place.left - 150) > 20 || place.top > 96 || place.top < 56);
});

test("numbers of wood close together stand apart, none over the wood of another", () => {
  const spots = [spot(100, 100), spot(108, 100), spot(104, 112), spot(120, 96), spot(112, 120)];
  const placed = places(spots);
  placed.forEach((one, number) => {
    assert.notEqual(one, null);
    for (const other of placed.slice(number + 1)) assert.ok(apart(one, other));
    for (const { left, top } of spots) {
      assert.ok(Math.abs(left - one.left) >= 12 || Math.abs(top - one.top) >= 10);
    }
  });
});

test("two remarks on one piece have two numbers", () => {
  const [one, other] = places([spot(100, 100), spot(100, 100)]);
  assert.ok(apart(one, other));
});

test("the first is served first; where no room is near, a later one has no number", () => {
  const placed = places(Array.from({ length: 60 }, () => spot(150, 100)));
  assert.notEqual(placed[0], null);
  assert.equal(placed.at(-1), null);
  assert.ok(placed.filter((one) => one !== null).length >= 8);
});

test("a window that is smaller than a number has none", () => {
  assert.deepEqual(places([spot(5, 5)], [], { width: 10, height: 10 }), [null]);
});
