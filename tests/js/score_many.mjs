/**
 * Scores many prunings: `node score_many.mjs FILE`, one JSON object a line with `sheet`, `states`
 * and `cuts`; prints one JSON result a line. A line may leave `sheet` out to use the one before.
 */

import { readFileSync } from "node:fs";

import { score } from "../../site_assets/js/scoring.mjs";

let sheet = null;
const lines = readFileSync(process.argv[2], "utf8").split("\n").filter(Boolean);
for (const line of lines) {
  const given = JSON.parse(line);
  sheet = given.sheet ?? sheet;
  process.stdout.write(`${JSON.stringify(score(sheet, given.states, given.cuts))}\n`);
}
