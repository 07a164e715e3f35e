import assert from "node:assert/strict";
import { describe, test } from "node:test";

import { KeptWork } from "../../site_assets/js/lms/kept_work.mjs";
import { packWork, unpackWork } from "../../site_assets/js/lms/packed_work.mjs";
import { pack, unpack } from "../../site_assets/js/lms/suspended.mjs";
import { freshProgress } from "../../site_assets/js/quiz/progress.mjs";
import { freshWork, versionOf } from "../../site_assets/js/saved_work.mjs";
import { Keeper } from "../../site_assets/js/storage.mjs";
import * as wood from "../../site_assets/js/wood.mjs";
import { smallVine } from "./fixtures/small_vine.mjs";

const sheet = smallVine();
const cut = (part, buds, how = {}) => ({ part, buds, pass: "rough", tool: "shears", stub: "right", ...how });

/** Work with every thing that can be kept. */
function someWork() {
  let history = wood.addCuts(wood.start(), [cut("L1a", null)]);
  history = wood.startAgain(history);
  history = wood.addCuts(history, [cut("L1b", 4)]);
  history = wood.changePass(history, 1);
  history = wood.addCuts(history, [cut("L1b", 2, { pass: "thinning-out", tool: "saw", stub: "long" })]);
  return { ...freshWork(), history, how: { tool: "saw", stub: null }, position: 1, closer: true, measuresOpen: false };
}

describe("work on a vine", () => {
  test("comes back as it was, but for what a fresh start took back", () => {
    const work = someWork();
    const back = unpackWork(sheet, JSON.parse(JSON.stringify(packWork(sheet, work))));
    const { history, ...rest } = work;
    const { history: again, ...others } = back;
    assert.deepEqual(others, rest);
    assert.deepEqual(wood.replay(sheet, again), wood.replay(sheet, history));
    assert.equal(again.pass, history.pass);
    assert.equal(again.steps.length, 2);
  });

  test("what was undone is not kept", () => {
    const history = wood.undo(wood.addCuts(wood.start(), [cut("L1b", 2)]));
    assert.equal(packWork(sheet, { ...freshWork(), history }).at(-1), "");
  });

  const BAD = [null, 0, "", [], [0, 0, 1, "--", 0, "0", "000zz"], [0, 0, 1, "--", 0, "9", ""], [0, 0, 1, "--", 0, "0", "0002.99"]];
  for (const bad of BAD) {
    test(`not work on this vine: ${JSON.stringify(bad)}`, () => assert.equal(unpackWork(sheet, bad), null));
  }
});

const quiz = {
  ...{ quiz: "week", version: "abc", language: "en", title: "", intro: "", minutes: 1, tries: 2, needed: 1 },
  ...{ scored: ["pick", "vine"], mustKnow: [], links: { rules: {}, chapters: {} }, strings: {} },
  questions: [
    { id: "pick", kind: "choice", choices: [{}, {}], rules: [] },
    { id: "sort", kind: "order", items: [{}, {}, {}], order: [2, 0, 1], rules: [] },
    { id: "wood", kind: "part", targets: [{ name: "L1a" }], right: ["L1a"], rules: [] },
    { id: "vine", kind: "prune", case: sheet.case, rules: [] },
  ],
};

describe("what a page keeps", () => {
  const reader = (kept) => (key) => kept[key] ?? null;

  test("an exercise", () => {
    const held = { sheets: [sheet], quiz: null };
    const key = `work:${sheet.case}`;
    const text = pack(held, reader({ [key]: { version: versionOf(sheet), work: someWork() } }));
    assert.match(text, /^[\x20-\x7e]+$/);
    const { version, work } = unpack(held, text).get(`pencilwood:${key}`);
    assert.equal(version, versionOf(sheet));
    assert.equal(work.history.steps.length, 2);
  });

  test("a quiz with its vine", () => {
    const held = { sheets: [sheet], quiz };
    const answers = { pick: 0, sort: [2, 1, 0], wood: "L1a", vine: { passed: false, score: 40 } };
    const progress = { ...freshProgress(quiz), turn: 9, round: 1, mode: "test", at: 2, answers, checked: ["sort"], tries: 1 };
    const work = { version: versionOf(sheet), work: someWork() };
    const text = pack(held, reader({ "quiz:week": progress, [`quiz:week:work:${sheet.case}`]: work }));
    const found = unpack(held, text);
    assert.deepEqual(found.get("pencilwood:quiz:week"), progress);
    assert.equal(found.get(`pencilwood:quiz:week:work:${sheet.case}`).work.history.steps.length, 2);
  });

  test("of other questions, or of another vine, nothing is taken up", () => {
    const held = { sheets: [sheet], quiz };
    const text = pack(held, reader({}));
    assert.equal(unpack({ sheets: [sheet], quiz: { ...quiz, version: "new" } }, text).size, 0);
    assert.equal(unpack({ sheets: [{ ...sheet, version: "new" }], quiz }, text).size, 0);
    for (const bad of ["", "{", "null", "[2]", "bookmark=4"]) assert.equal(unpack(held, bad).size, 0);
  });
});

test("a page's store in memory tells each change once", () => {
  let changes = 0;
  const kept = new KeptWork(new Map([["pencilwood:a", { n: 1 }]]), () => (changes += 1));
  globalThis.pencilwoodShelf = kept;
  const keeper = new Keeper();
  delete globalThis.pencilwoodShelf;
  const trying = changes;
  assert.deepEqual(keeper.read("a"), { n: 1 });
  keeper.write("a", { n: 1 });
  assert.equal(changes, trying);
  keeper.write("a", { n: 2 });
  assert.equal(changes, trying + 1);
});
