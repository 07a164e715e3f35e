import assert from "node:assert/strict";
import { describe, test } from "node:test";

import { Bridge } from "../../site_assets/js/lms/bridge.mjs";
import { LearningSystem } from "../../site_assets/js/lms/learning_system.mjs";
import { freshWork, versionOf } from "../../site_assets/js/saved_work.mjs";
import { smallVine } from "./fixtures/small_vine.mjs";

/** A learning system in memory; `has` is what it keeps of before. */
function joined(has = {}, sheet = smallVine()) {
  const kept = { "cmi.core.lesson_status": "not attempted", "cmi.interactions._count": "0", ...has };
  const calls = [];
  const api = {
    LMSInitialize: () => "true",
    LMSFinish: () => "true",
    LMSCommit: () => (calls.push("commit"), "true"),
    LMSGetValue: (name) => kept[name] ?? "",
    LMSSetValue: (name, value) => ((kept[name] = value), "true"),
    LMSGetLastError: () => "0",
  };
  let now = 0;
  const system = new LearningSystem(api, () => now);
  system.begin();
  const told = [];
  const bridge = new Bridge({ sheets: [sheet], quiz: null }, system, (key) => told.push(key));
  const work = (done) => {
    const text = { version: versionOf(sheet), work: { ...freshWork(), done } };
    bridge.work.setItem(`pencilwood:work:${sheet.case}`, JSON.stringify(text));
  };
  return { bridge, calls, kept, told, work, later: (ms) => (now += ms) };
}

describe("the bridge", () => {
  test("begins an attempt, and leaves the status of an earlier one", () => {
    assert.equal(joined().kept["cmi.core.lesson_status"], "incomplete");
    const { kept, told } = joined({ "cmi.core.lesson_status": "passed", "cmi.core.score.raw": "91" });
    assert.equal(kept["cmi.core.lesson_status"], "passed");
    assert.equal(told.at(-1), "passed");
  });

  test("the score of an earlier visit is beaten only by a better one", () => {
    const { bridge, kept } = joined({ "cmi.core.lesson_status": "passed", "cmi.core.score.raw": "91" });
    bridge.exerciseDone({ exercise: "a", score: 85, cutting: 100, passed: true });
    assert.equal(kept["cmi.core.score.raw"], "91");
    assert.equal(kept["cmi.interactions.0.student_response"], "vine 85 cutting 100");
    bridge.exerciseDone({ exercise: "a", score: 97, cutting: 100, passed: true });
    assert.equal(kept["cmi.core.score.raw"], "97");
  });

  test("a system without interactions gets none", () => {
    const { bridge, kept } = joined({ "cmi.interactions._count": "" });
    bridge.exerciseDone({ exercise: "a", score: 85, cutting: 100, passed: true });
    assert.deepEqual(Object.keys(kept).filter((name) => /interactions\.\d/.test(name)), []);
    assert.equal(kept["cmi.core.score.raw"], "85");
  });

  test("work is kept at each change, and committed now and then", () => {
    const { calls, kept, work, later } = joined();
    work(false);
    assert.match(kept["cmi.suspend_data"], /^\[1,/);
    assert.equal(kept["cmi.core.lesson_location"], "rough");
    assert.deepEqual(calls, []);
    later(60_001);
    work(true);
    assert.deepEqual(calls, ["commit"]);
  });

  test("what doesn't fit keeps the last that did, and says so", () => {
    const long = { ...smallVine(), version: "x".repeat(5000) };
    const { kept, told, work } = joined({ "cmi.suspend_data": "before" }, long);
    work(false);
    assert.equal(kept["cmi.suspend_data"], "before");
    assert.equal(told.at(-1), "too-long");
  });

  test("in review nothing is written, not even the way out", () => {
    const has = { "cmi.core.lesson_mode": "review", "cmi.core.lesson_status": "passed" };
    const { bridge, calls, kept, told, work } = joined(has);
    const before = { ...kept };
    work(true);
    bridge.exerciseDone({ exercise: "a", score: 97, cutting: 100, passed: true });
    bridge.hidden();
    assert.deepEqual(kept, before);
    assert.deepEqual(calls, []);
    assert.equal(told.at(-1), "looking");
  });
});
