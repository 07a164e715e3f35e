// Which names of places stay on a small picture, from plain rectangles.

import assert from "node:assert/strict";
import { test } from "node:test";

import { freeOf } from "../../site_assets/js/place_names.mjs";

const name = (left, top = 0) => ({ left, right: left + 20, top, bottom: top + 12 });

test("a name that would lie over the one before it is left out", () => {
  assert.deepEqual(freeOf([name(0), name(10), name(24), name(60)], []), [true, false, true, true]);
});

test("names in rows of their own do not hide each other", () => {
  assert.deepEqual(freeOf([name(0), name(5, 12), name(5, 6)], []), [true, true, false]);
});

test("what is taken already goes before all names", () => {
  assert.deepEqual(freeOf([name(0), name(40)], [name(8)]), [false, true]);
});
