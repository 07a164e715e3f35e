/** Unpacks many sheets: `node unpack_many.mjs FILE`, one short sheet a line; prints them whole. */

import { readFileSync } from "node:fs";

import { unpackSheet } from "../../site_assets/js/compact_sheet.mjs";

for (const line of readFileSync(process.argv[2], "utf8").split("\n").filter(Boolean)) {
  process.stdout.write(`${JSON.stringify(unpackSheet(JSON.parse(line)))}\n`);
}
