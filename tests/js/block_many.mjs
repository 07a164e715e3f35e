/**
 * Does many sums: `node block_many.mjs FILE`. The file's first line holds the data of the page in
 * each language, every other line `{question, language, units, texts}`; prints one JSON result a
 * line: what would be shown, or the problem and its field.
 */

import { readFileSync } from "node:fs";

import { asTexts, readField, work } from "../../site_assets/js/block/questions.mjs";
import { Shown } from "../../site_assets/js/block/shown.mjs";

const [pages, ...rows] = readFileSync(process.argv[2], "utf8")
  .split("\n")
  .filter(Boolean)
  .map((line) => JSON.parse(line));

function answer({ question: name, language, units, texts }) {
  const page = pages[language];
  const shown = new Shown(page, units);
  const question = page.questions.find((one) => one.name === name);
  const given = {};
  for (const [field, written] of Object.entries(texts)) {
    try {
      given[field] = readField(page, shown, field, written);
    } catch (error) {
      return { problem: error.problem, field };
    }
  }
  try {
    return asTexts(shown, work(page, question, given));
  } catch (error) {
    return { problem: error.problem, field: error.field };
  }
}

for (const row of rows) process.stdout.write(`${JSON.stringify(answer(row))}\n`);
