import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { Words } from "../../site_assets/js/words.mjs";

const strings = {
  "exercise.left.one": "{n} bud left.",
  "exercise.left.many": "{n} buds left.",
  "exercise.name": "Position {name}",
  "exercise.wood-above": "{part} arriba de {piece}",
};
const words = (language = "en", units = "metric") => new Words({ language, units, strings });

test("placeholders are filled, unknown ones stay to be seen", () => {
  assert.equal(words().say("name", { name: "L1" }), "Position L1");
  assert.equal(words().say("name"), "Position {name}");
});

test("a missing text shows its key", () => {
  assert.equal(words().say("nothing"), "exercise.nothing");
});

test("one and many", () => {
  assert.equal(words().count("left", 1), "1 bud left.");
  assert.equal(words().count("left", 0), "0 buds left.");
});

test("lengths fill both spellings of their name", () => {
  const facts = { gap_mm: 65, buds: 3 };
  assert.equal(words().fill("{gap} {gap_mm} {buds}", facts), "6.5\u00a0cm 6.5\u00a0cm 3");
});

test("names of wood are put into the reader's language", () => {
  assert.equal(words().wood("L1m"), "L1m");
  assert.equal(words().wood("L1m above a"), "L1m arriba de a");
});

test("a filled-in text isn't filled a second time", () => {
  assert.equal(words().fill("{where}", { where: "{buds}", buds: 3 }), "{buds}");
});

// The same figures as the Python side's format_length gives.
const LENGTHS = [
  [8, "8 mm", "8 mm", "5/16 in"],
  [20, "2 cm", "2 cm", "13/16 in"],
  [65, "6.5 cm", "6,5 cm", "2 1/2 in"],
  [100, "10 cm", "10 cm", "4 in"],
  [900, "90 cm", "90 cm", "35 1/2 in"],
  [1500, "150 cm", "150 cm", "5 ft"],
  [12340, "12.3 m", "12,3 m", "40 1/2 ft"],
  [0, "0 mm", "0 mm", "0 in"],
];
/** No line ends between a number and its unit. @param {string} text */
const onOneLine = (text) => text.replace(/ (?=[a-z]+$)/, "\u00a0");
for (const [mm, metric, spanish, us] of LENGTHS) {
  test(`${mm} mm is shown as ${metric}, ${spanish}, ${us}`, () => {
    assert.equal(words().length(mm), onOneLine(metric));
    assert.equal(words("es").length(mm), onOneLine(spanish));
    assert.equal(words("en", "us").length(mm), onOneLine(us));
  });
}

const textsOf = (language) =>
  JSON.parse(
    readFileSync(
      new URL(`../../generator/pencilwood/words/exercise.${language}.json`, import.meta.url),
      "utf8",
    ),
  );
const placeholders = (text) => [...text.matchAll(/\{\w+\}/g)].map(String).sort();

test("English and Spanish have the same texts with the same placeholders", () => {
  const [en, es] = [textsOf("en"), textsOf("es")];
  assert.deepEqual(Object.keys(es), Object.keys(en));
  for (const key of Object.keys(en)) {
    assert.deepEqual(placeholders(es[key]), placeholders(en[key]), key);
  }
});
