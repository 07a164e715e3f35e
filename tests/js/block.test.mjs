/** Exact numbers, ranges, and the forms' own way of reading and writing them. */

import assert from "node:assert/strict";
import { test } from "node:test";

import { Fraction } from "../../site_assets/js/block/fraction.mjs";
import { BlockError, Range, rounded, significant } from "../../site_assets/js/block/range.mjs";
import { Shown } from "../../site_assets/js/block/shown.mjs";

const of = Fraction.of;

const PAGE = /** @type {any} */ ({
  language: "en",
  strings: {
    range: "{low} to {high}",
    likely: "{range} (most likely {likely})",
    "unit.kg": "kg",
    "unit.lb": "lb",
    "word.buds.one": "bud",
    "word.buds.many": "buds",
  },
  units: { weight: { kg: "1000/1", lb: "45359237/100000" }, number: { "": "1/1" } },
  measures: {
    weight: { kind: "weight", metric: "kg", us: "lb", whole: false, word: "", exact: false },
    buds: { kind: "number", metric: "", us: "", whole: true, word: "buds", exact: false },
  },
});
const METRIC = new Shown(PAGE, "metric");
const US = new Shown(PAGE, "us");
const SPANISH = new Shown({ ...PAGE, language: "es" }, "metric");

const range = (low, likely, high, digits = null) =>
  new Range(of(low), of(likely), of(high), digits);

test("fractions stay exact", () => {
  assert.ok(of("0.1").plus(of("0.2")).equals(of("3/10")));
  assert.ok(of("-7/2").floor().equals(of(-4)));
  assert.ok(of("-7/2").ceiling().equals(of(-3)));
  assert.ok(of("5/2").nearest().equals(of(3)));
  assert.ok(of("-5/2").nearest().equals(of(-2)));
  assert.ok(new Fraction(1n, -2n).equals(of("-1/2")));
});

test("significant digits, half up", () => {
  const rows = [
    ["1234.5", 3, "1230"],
    ["0.012345", 2, "0.012"],
    ["9.96", 2, "10"],
    ["0.25", 1, "0.3"],
    ["-0.25", 1, "-0.3"],
    ["0", 2, "0"],
  ];
  for (const [value, digits, wanted] of rows) {
    assert.ok(significant(of(value), /** @type {number} */ (digits)).equals(of(wanted)), value);
  }
});

test("a count is whole and keeps three digits", () => {
  assert.ok(rounded(of("61.5"), 2, true).equals(of(62)));
  assert.ok(rounded(of("1724"), 2, true).equals(of(1720)));
  assert.ok(rounded(of("1724"), null, true).equals(of(1724)));
});

test("subtracting and dividing turn the ends", () => {
  const three = range(1, 2, 3);
  assert.deepEqual(three.minus(range(1, 1, 3)).three.map((one) => one.toNumber()), [-2, 1, 2]);
  assert.deepEqual(range(6, 6, 6).over(three).three.map((one) => one.toNumber()), [2, 3, 6]);
  assert.throws(() => three.over(range(0, 1, 2)), BlockError);
  assert.throws(() => range(3, 2, 1), BlockError);
});

test("a result keeps the fewest digits of its inputs", () => {
  assert.equal(range(1, 2, 3, 4).times(range(1, 1, 1, 2)).digits, 2);
  assert.equal(range(1, 2, 3, 4).times(2).digits, 4);
});

test("fields read point and comma, and refuse nonsense by name", () => {
  assert.ok(METRIC.range(["2,5"], "weight").likely.equals(of(2500)));
  assert.ok(US.range(["2"], "weight").likely.equals(of("907.18474")));
  for (const [text, problem] of [["", "missing"], ["many", "not-a-number"], ["-3", "not-a-number"], ["1e5", "not-a-number"]]) {
    assert.throws(() => METRIC.range([text], "weight"), { problem });
  }
  assert.throws(() => METRIC.range(["3", "2", "1"], "weight"), { problem: "turned-round" });
});

test("answers are written in the reader's way", () => {
  assert.equal(METRIC.text(range(2300, 2500, 2800, 2), "weight"), "2.3 to 2.8 kg (most likely 2.5)");
  assert.equal(US.text(Range.of("907.18474"), "weight"), "2 lb");
  assert.equal(METRIC.text(Range.of(1), "buds"), "1 bud");
  assert.equal(SPANISH.decimal(of("12345.5")), "12\u00a0345,5");
  assert.equal(METRIC.decimal(of("12345.5")), "12,345.5");
  assert.equal(METRIC.decimal(of("12345.5"), false), "12345.5");
});
