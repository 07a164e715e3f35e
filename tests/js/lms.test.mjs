import assert from "node:assert/strict";
import { describe, test } from "node:test";

import { letter, timeOfDay, timespan } from "../../site_assets/js/lms/data_types.mjs";
import { findApi } from "../../site_assets/js/lms/find_api.mjs";
import { LearningSystem } from "../../site_assets/js/lms/learning_system.mjs";
import { exerciseEntries, isBetter, outcomeEntries, quizEntries } from "../../site_assets/js/lms/record.mjs";

// SCORM 1.2 Run-Time Environment, section 3.4.2: CMITimespan is HHHH:MM:SS.SS.
describe("data types", () => {
  const SPANS = [
    [0, "0000:00:00.00"],
    [5, "0000:00:00.01"],
    [59_999, "0000:01:00.00"],
    [723_500, "0000:12:03.50"],
    [3_600_000 * 26 + 61_020, "0026:01:01.02"],
    [-5, "0000:00:00.00"],
    [3_600_000 * 20_000, "9999:59:59.99"],
  ];
  for (const [ms, text] of SPANS) {
    test(`${ms} ms`, () => assert.equal(timespan(ms), text));
  }

  test("time of day", () => {
    assert.equal(timeOfDay(new Date(2026, 0, 5, 8, 5, 9)), "08:05:09");
  });

  test("letters end with z", () => {
    assert.deepEqual([letter(0), letter(25), letter(26)], ["a", "z", null]);
  });
});

describe("finding the learning system", () => {
  const api = { LMSInitialize: () => "true" };
  const top = (more) => {
    const made = { opener: null, ...more };
    made.parent = made;
    return made;
  };
  const under = (parent, more = {}) => ({ parent, opener: null, ...more });
  const closed = (parent) => ({
    parent,
    opener: null,
    get API() {
      throw new Error("SecurityError");
    },
  });

  const PLACES = [
    ["in this window", top({ API: api })],
    ["three frames up", under(under(under(top({ API: api }))))],
    ["in the window that opened us", top({ opener: top({ API: api }) })],
    ["above the window that opened the top", under(top({ opener: under(top({ API: api })) }))],
    ["past a frame of another address", under(closed(top({ API: api })))],
  ];
  for (const [where, start] of PLACES) test(where, () => assert.equal(findApi(start), api));

  test("the nearest one counts", () => {
    const other = { ...api };
    assert.equal(findApi(under(top({ API: other }), { API: api })), api);
  });

  test("nowhere", () => {
    assert.equal(findApi(under(top({ opener: top({}) }))), null);
  });

  test("windows that open each other", () => {
    const one = top({});
    one.opener = top({ opener: one });
    assert.equal(findApi(one), null);
  });
});

/** A system that keeps what it is told and answers as it is told to. */
function systemWith(answers = {}) {
  const told = [];
  const answer = (name, ...given) => {
    told.push([name, ...given]);
    const found = answers[name];
    return typeof found === "function" ? found(...given) : (found ?? "true");
  };
  const names = ["LMSInitialize", "LMSFinish", "LMSGetValue", "LMSSetValue", "LMSCommit", "LMSGetLastError"];
  const api = Object.fromEntries(names.map((name) => [name, (...given) => answer(name, ...given)]));
  let now = 1000;
  return { told, system: new LearningSystem(api, () => now), pass: (ms) => (now += ms) };
}

describe("a session", () => {
  test("begins, is kept and ends once, each with its time", () => {
    const { told, system, pass } = systemWith();
    assert.equal(system.begin(), true);
    pass(61_000);
    system.commit();
    pass(1000);
    system.end();
    system.end();
    assert.deepEqual(told, [
      ["LMSInitialize", ""],
      ["LMSSetValue", "cmi.core.session_time", "0000:01:01.00"],
      ["LMSCommit", ""],
      ["LMSSetValue", "cmi.core.session_time", "0000:01:02.00"],
      ["LMSFinish", ""],
    ]);
  });

  test("values go as text", () => {
    const { told, system } = systemWith();
    system.begin();
    system.set("cmi.core.score.raw", 82);
    assert.deepEqual(told.at(-1), ["LMSSetValue", "cmi.core.score.raw", "82"]);
  });

  test("that doesn't begin takes nothing", () => {
    const { told, system } = systemWith({ LMSInitialize: "false", LMSGetLastError: "101" });
    assert.equal(system.begin(), false);
    system.set("cmi.core.score.raw", 82);
    system.end();
    assert.deepEqual(told.map(([name]) => name), ["LMSInitialize", "LMSGetLastError"]);
    assert.equal(system.trouble, "101");
  });

  test("what is refused is kept as a trouble; what a system need not have is none", () => {
    const codes = { LMSSetValue: "false", LMSGetLastError: "401" };
    const { system } = systemWith(codes);
    system.begin();
    system.set("cmi.core.score.min", 0);
    assert.equal(system.trouble, "");
    codes.LMSGetLastError = "405";
    system.set("cmi.core.score.raw", 0);
    assert.equal(system.trouble, "405");
  });

  test("a system that breaks doesn't break the page", () => {
    const broken = () => {
      throw new Error("gone");
    };
    const { system } = systemWith({ LMSGetValue: broken, LMSCommit: broken });
    system.begin();
    assert.equal(system.get("cmi.suspend_data"), "");
    assert.equal(system.commit(), false);
    assert.equal(system.trouble, "–");
  });
});

describe("the record", () => {
  const now = new Date(2026, 0, 5, 8, 5, 9);

  test("a pass beats any score without one; then the higher score counts", () => {
    const outcome = (score, passed) => ({ score, passed });
    assert.equal(isBetter(outcome(10, false), null), true);
    assert.equal(isBetter(outcome(80, true), outcome(95, false)), true);
    assert.equal(isBetter(outcome(95, false), outcome(80, true)), false);
    assert.equal(isBetter(outcome(90, true), outcome(80, true)), true);
    assert.equal(isBetter(outcome(80, true), outcome(80, true)), false);
  });

  test("score and status", () => {
    assert.deepEqual(Object.fromEntries(outcomeEntries({ score: 79, passed: false })), {
      "cmi.core.score.raw": 79,
      "cmi.core.score.min": 0,
      "cmi.core.score.max": 100,
      "cmi.core.lesson_status": "failed",
    });
  });

  test("a try at a vine", () => {
    const entries = exerciseEntries({ exercise: "tidy-vine", score: 90, cutting: 70, passed: true }, 4, now);
    assert.deepEqual(Object.fromEntries(entries), {
      "cmi.interactions.4.id": "tidy-vine",
      "cmi.interactions.4.type": "performance",
      "cmi.interactions.4.time": "08:05:09",
      "cmi.interactions.4.weighting": 1,
      "cmi.interactions.4.student_response": "vine 90 cutting 70",
      "cmi.interactions.4.result": "correct",
    });
  });

  const common = { rules: [], chapter: null, drawing: null, about: "choose", text: "", mustKnow: false };
  const choices = [false, true].map((right) => ({ text: "", why: "", right }));
  const targets = Array.from({ length: 12 }, (_, n) => ({ name: `L${n}`, label: "", kind: "" }));
  const questions = [
    { ...common, id: "pick", kind: "choice", choices },
    { ...common, id: "sort", kind: "order", items: [{}, {}, {}], order: [2, 0, 1] },
    { ...common, id: "few", kind: "part", targets, right: ["L1", "L2"], why: "", whys: {} },
    { ...common, id: "many", kind: "part", targets, right: targets.slice(0, 11).map(({ name }) => name), why: "", whys: {} },
    { ...common, id: "vine", kind: "prune", case: "tidy" },
  ];
  const data = { questions, scored: ["pick", "sort", "few", "many"] };
  const told = (answers) => {
    const found = {};
    for (const [name, value] of quizEntries(data, answers, 2, now)) {
      const [number, ...rest] = name.replace("cmi.interactions.", "").split(".");
      (found[number] ??= {})[rest.join(".")] = value;
    }
    return Object.values(found);
  };

  test("answers are letters, and names of wood", () => {
    const answers = { pick: 1, sort: [2, 0, 1], few: "L3", many: "L1", vine: { passed: true, score: 88 } };
    const [pick, sort, few, many, vine] = told(answers);
    const time = "08:05:09";
    assert.deepEqual(pick, {
      ...{ id: "pick", type: "choice", time, weighting: 1, "correct_responses.0.pattern": "b" },
      ...{ student_response: "b", result: "correct" },
    });
    assert.deepEqual([sort.type, sort.student_response, sort.result], ["sequencing", "c,a,b", "correct"]);
    assert.deepEqual([few.type, few.student_response, few.result], ["fill-in", "L3", "wrong"]);
    assert.equal(few["correct_responses.1.pattern"], "L2");
    assert.equal("correct_responses.0.pattern" in many, false);
    assert.deepEqual([vine.student_response, vine.result, vine.weighting], ["vine 88", "correct", 0]);
  });

  test("no answer is no response, and wrong", () => {
    for (const one of told({})) {
      assert.equal("student_response" in one, false);
      assert.equal(one.result, "wrong");
    }
  });
});
