import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import test from "node:test";

import { FIELDS } from "../../site_assets/js/quiz/slip.mjs";

const FOLDER = new URL("../../site_assets/js/quiz/", import.meta.url);
const WORDS = new URL("../../generator/pencilwood/words/quiz.en.json", import.meta.url);
const keys = Object.keys(JSON.parse(readFileSync(WORDS, "utf8"))).map((key) => key.slice(5));
const source = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".mjs"))
  .map((name) => readFileSync(new URL(name, FOLDER), "utf8"))
  .join("\n");

/** Keys that the modules write out, and the beginnings of those they put together. */
const written = [...source.matchAll(/"([a-z][a-z-]*(?:\.[a-z-]+)*)"/g)].map(([, key]) => key);
const begun = [...source.matchAll(/(?:say|count)\(`([a-z.-]+\.)\$\{/g)].map(([, start]) => start);

test("every sentence that is asked for is written", () => {
  const asked = [...source.matchAll(/\b(say|count)\(\s*"([a-z.-]+)"/g)];
  assert.ok(asked.length > 60);
  for (const [, how, key] of asked) {
    const wanted = how === "count" ? [`${key}.one`, `${key}.many`] : [key];
    for (const one of wanted) assert.ok(keys.includes(one), one);
  }
  for (const field of FIELDS) {
    assert.ok(keys.includes(`slip.${field}`), field);
    assert.ok(keys.includes(`fault.${field}`), field);
  }
});

test("every sentence that is written is asked for", () => {
  const stale = keys.filter((key) => {
    const bare = key.replace(/\.(one|many)$/, "");
    return !written.includes(bare) && !begun.some((start) => key.startsWith(start));
  });
  assert.deepEqual(stale, []);
});
