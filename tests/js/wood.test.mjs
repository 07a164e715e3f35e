import assert from "node:assert/strict";
import { describe, test } from "node:test";

import * as wood from "../../site_assets/js/wood.mjs";
import { smallVine, UNCUT } from "./fixtures/small_vine.mjs";

const sheet = smallVine();
const how = { pass: "rough", tool: "shears", stub: "right" };
const cut = (part, buds) => ({ part, buds, ...how });
const stepsOf = (...steps) => steps.reduce(wood.addCuts, wood.start());
const statesOf = (history) => wood.replay(sheet, history).states;

describe("cutting", () => {
  test("the uncut vine has all its wood", () => {
    assert.deepEqual(wood.uncut(sheet), UNCUT);
  });

  test("shortening leaves so many buds", () => {
    assert.deepEqual(wood.cutWood(sheet, UNCUT, "L1b", 2), [1, 4, 2, 6, 2]);
  });

  test("taking old wood off takes all that grows from it", () => {
    assert.deepEqual(wood.cutWood(sheet, UNCUT, "L1m", null), [0, 0, 0, 6, 2]);
  });

  test("the states given are left as they were", () => {
    const states = [...UNCUT];
    wood.cutWood(sheet, states, "L1m", null);
    assert.deepEqual(states, UNCUT);
  });

  // A reason beside each row.
  const REFUSED = [
    ["L1b", 6, UNCUT], // as many buds as there are
    ["L1b", 7, UNCUT], // more buds than there are
    ["L1b", 0, UNCUT], // taking off is a cut of its own
    ["L1m", 1, UNCUT], // old wood has no buds to leave
    ["L1a", null, [0, 0, 0, 6, 2]], // already gone
    ["Z1", null, UNCUT], // no such wood
  ];
  for (const [part, buds, states] of REFUSED) {
    test(`refused: ${part} to ${buds} of ${states}`, () => {
      assert.throws(() => wood.cutWood(sheet, states, part, buds), RangeError);
    });
  }

  test("legal cuts are those that cutWood takes", () => {
    for (const states of [UNCUT, [1, 2, 0, 1, 0], [0, 0, 0, 0, 0]]) {
      sheet.pieces.forEach(({ name }, number) => {
        const legal = wood.legalCuts(sheet, states, number);
        for (const buds of [null, 0, 1, 2, 3, 4, 5, 6, 7]) {
          const make = () => wood.cutWood(sheet, states, name, buds);
          if (legal.includes(buds)) assert.equal(make()[number], buds ?? 0);
          else assert.throws(make, RangeError);
        }
      });
    }
  });
});

describe("history", () => {
  test("undo and redo go through the steps", () => {
    const two = stepsOf([cut("L1b", 5)], [cut("R1a", null)]);
    const one = wood.undo(two);
    assert.deepEqual(statesOf(one), [1, 4, 5, 6, 2]);
    assert.deepEqual(statesOf(wood.undo(one)), UNCUT);
    assert.deepEqual(statesOf(wood.redo(one)), [1, 4, 5, 0, 2]);
  });

  test("nothing to undo or redo changes nothing", () => {
    const fresh = wood.start();
    assert.equal(wood.undo(fresh), fresh);
    assert.equal(wood.redo(fresh), fresh);
  });

  test("a new cut forgets what could have been redone", () => {
    const other = wood.addCuts(wood.undo(stepsOf([cut("L1b", 5)])), [cut("L1a", 1)]);
    assert.equal(wood.redo(other), other);
    assert.deepEqual(statesOf(other), [1, 1, 6, 6, 2]);
  });

  test("shortening all canes is one step", () => {
    const cuts = wood.shortenAll(sheet, UNCUT, 5, how);
    assert.deepEqual(cuts, [cut("L1b", 5), cut("R1a", 5)]);
    const done = stepsOf(cuts);
    assert.deepEqual(statesOf(done), [1, 4, 5, 5, 2]);
    assert.deepEqual(statesOf(wood.undo(done)), UNCUT);
  });

  test("starting again can be undone, and brings the pass back too", () => {
    const inFine = wood.changePass(wood.changePass(stepsOf([cut("L1b", 2)]), 1), 1);
    const again = wood.startAgain(inFine);
    assert.deepEqual(wood.replay(sheet, again), { states: UNCUT, cuts: [] });
    assert.equal(again.pass, "rough");
    const back = wood.undo(again);
    assert.equal(back.pass, "fine");
    assert.deepEqual(statesOf(back), [1, 4, 2, 6, 2]);
    assert.equal(wood.redo(back).pass, "rough");
  });

  test("a history survives being kept as JSON", () => {
    const history = wood.startAgain(stepsOf([cut("L1b", 5)], [cut("R1a", null)]));
    assert.deepEqual(JSON.parse(JSON.stringify(history)), history);
  });
});

describe("passes", () => {
  test("go forward and back, and stop at both ends", () => {
    const passes = [];
    let history = wood.start();
    for (const by of [-1, 1, 1, 1, -1]) {
      history = wood.changePass(history, by);
      passes.push(history.pass);
    }
    assert.deepEqual(passes, ["rough", "thinning-out", "fine", "fine", "thinning-out"]);
  });

  test("a cut is out of order after a cut of a later pass only", () => {
    const late = [{ ...cut("L1b", 2), pass: "fine" }];
    assert.equal(wood.isOutOfOrder(wood.start(), late), true);
    assert.equal(wood.isOutOfOrder(wood.start(), [cut("L1b", 5)]), false);
    const inFine = { ...wood.start(), pass: "fine" };
    assert.equal(wood.isOutOfOrder(inFine, late), false);
  });
});
