import assert from "node:assert/strict";
import test from "node:test";

import { asKept, freshWork, takeUp, versionOf, workOf } from "../../site_assets/js/saved_work.mjs";
import { Keeper } from "../../site_assets/js/storage.mjs";
import { addCuts, start, undo } from "../../site_assets/js/wood.mjs";
import { smallVine } from "./fixtures/small_vine.mjs";

/** A store in memory that can be told to fail. */
function shelf() {
  const kept = new Map();
  return {
    kept,
    full: false,
    getItem: (key) => kept.get(key) ?? null,
    setItem(key, value) {
      if (this.full) throw new Error("QuotaExceededError");
      kept.set(key, value);
    },
    removeItem: (key) => kept.delete(key),
  };
}

test("what was kept is read again, under our own prefix", () => {
  const store = shelf();
  const keeper = new Keeper(() => store);
  assert.equal(keeper.write("work:a", { n: 1 }), true);
  assert.deepEqual([...store.kept.keys()], ["pencilwood:work:a"]);
  assert.deepEqual(new Keeper(() => store).read("work:a"), { n: 1 });
});

test("nothing kept, or kept badly, reads as null", () => {
  const store = shelf();
  store.kept.set("pencilwood:work:a", "{not json");
  const keeper = new Keeper(() => store);
  assert.equal(keeper.read("work:a"), null);
  assert.equal(keeper.read("work:b"), null);
});

test("a browser that refuses is worked with, and it says so", () => {
  const keeper = new Keeper(() => {
    throw new Error("SecurityError");
  });
  assert.equal(keeper.isKept, false);
  assert.equal(keeper.write("work:a", 1), false);
  assert.equal(keeper.read("work:a"), null);
});

test("a store that fills up later says so, and recovers", () => {
  const store = shelf();
  const keeper = new Keeper(() => store);
  store.full = true;
  assert.equal(keeper.write("work:a", 1), false);
  assert.equal(keeper.isKept, false);
  store.full = false;
  assert.equal(keeper.write("work:a", 1), true);
  assert.equal(keeper.isKept, true);
});

const sheet = smallVine();
const done = { part: "R1a", buds: 5, pass: "rough", tool: "shears", stub: "right" };
const work = {
  ...freshWork(),
  history: undo(addCuts(addCuts(start(), [done]), [{ ...done, buds: 2 }])),
  how: { tool: "saw", stub: "long" },
  position: 2,
  closer: true,
  measuresOpen: false,
  done: true,
};

test("work is taken up as it was left", () => {
  assert.deepEqual(takeUp(sheet, JSON.parse(JSON.stringify(work))), work);
});

// A reason beside each row.
const SPOILED = [
  null, // nothing kept
  "text", // not ours
  {}, // no history
  { ...work, history: { ...work.history, pass: "winter" } }, // no such pass
  { ...work, history: { ...work.history, done: 9 } }, // more steps than there are
  { ...work, history: { ...work.history, done: -1 } },
  { ...work, history: { ...work.history, steps: [{ cuts: [{ ...done, part: "Z9" }] }], done: 1 } },
  { ...work, history: { ...work.history, steps: [{ cuts: [{ ...done, buds: 60 }] }], done: 0 } },
  { ...work, history: { ...work.history, steps: [null], done: 1 } },
];
for (const spoiled of SPOILED) {
  test(`starts fresh from ${JSON.stringify(spoiled)?.slice(0, 90)}`, () => {
    assert.deepEqual(takeUp(sheet, spoiled), freshWork());
  });
}

test("choices that don't exist are dropped one by one", () => {
  const { how, position } = takeUp(sheet, { ...work, how: { tool: "axe", stub: "long" }, position: 7 });
  assert.deepEqual(how, { tool: null, stub: "long" });
  assert.equal(position, 0);
});

test("work of another sheet is not taken up", () => {
  const { version, ...bare } = sheet;
  for (const one of [sheet, bare]) {
    assert.deepEqual(workOf(one, JSON.parse(JSON.stringify(asKept(one, work)))), work);
    for (const other of [null, "text", { work }, { ...asKept(one, work), version: "old" }]) {
      assert.equal(workOf(one, other), null);
    }
  }
  assert.equal(workOf({ ...sheet, version: `${version}b` }, asKept(sheet, work)), null);
});

test("a sheet without a version is known by its content", () => {
  const { version, ...bare } = sheet;
  assert.equal(versionOf(sheet), version);
  assert.equal(versionOf(bare), versionOf({ ...bare }));
  assert.notEqual(versionOf(bare), versionOf({ ...bare, planLost: 5 }));
});
