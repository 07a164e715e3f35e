import assert from "node:assert/strict";
import { test } from "node:test";

import { endsOf } from "../../site_assets/js/practice_frame.mjs";
import { letterBeside, takenBy } from "../../site_assets/js/practice_letters.mjs";
import { casesOf } from "./fixtures/alike.mjs";

globalThis.document = {
  createElementNS: (_space, tag) => {
    const attributes = {};
    return { tag, attributes, setAttribute: (name, value) => (attributes[name] = value) };
  },
};

const standing = (x) => ({ points: [0, 60, 120, 180, 240].map((up) => ({ x, y: -up })), half: 8 });

function lettered(stems) {
  const taken = takenBy(stems);
  return stems.map((stem) => letterBeside("a", stem, taken).attributes);
}

for (const { why, ends, ...vine } of casesOf("ends_of_vines.json")) {
  test(`trunk and arms end where the handbook's own drawings end them: ${why}`, () => {
    assert.deepEqual(endsOf(vine), ends);
  });
}

test("letters stand clear of all wood and of each other", () => {
  const stems = [0, 90, 180].map(standing);
  const placed = lettered(stems);
  for (const [number, { class: name, x, y }] of placed.entries()) {
    assert.equal(name, "pw-letter");
    for (const { points, half } of stems) assert.ok(Math.abs(x - points[0].x) >= half + 12);
    for (const other of placed.slice(number + 1)) assert.ok(Math.hypot(other.x - x, other.y - y) > 20);
  }
});

test("a letter without room is left to the close-up", () => {
  const placed = lettered([0, 20, 40, 60, 80].map(standing));
  assert.match(placed[2].class, /pw-tight/);
  assert.doesNotMatch(placed[0].class, /pw-tight/);
});
