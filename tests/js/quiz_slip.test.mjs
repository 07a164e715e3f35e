import assert from "node:assert/strict";
import test from "node:test";

import { checkCode, tidyCode } from "../../site_assets/js/quiz/check_code.mjs";
import { asCsv, gather, isListed, takeUpList } from "../../site_assets/js/quiz/crew.mjs";
import { isDate, shownDate } from "../../site_assets/js/quiz/days.mjs";
import { checkSlip, codeOf, readLine, slipLine } from "../../site_assets/js/quiz/slip.mjs";

const SLIP = {
  name: "Ana Núñez",
  language: "es",
  quiz: "first-week",
  version: "3f2a9c",
  score: "86",
  date: "2026-01-31",
  topics: "partes; conteo",
};
const HEADINGS = ["Name", "Language", "Quiz", "Version", "Score", "Date", "Topics", "Code"];

/**
 * A reader of RFC 4180 written apart from the writer.
 *
 * @param {string} text
 */
function readCsv(text) {
  const rows = [[""]];
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const row = rows[rows.length - 1];
    const sign = text[at];
    if (quoted && sign === '"' && text[at + 1] === '"') row[row.length - 1] += text[(at += 1)];
    else if (sign === '"') quoted = !quoted;
    else if (quoted) row[row.length - 1] += sign;
    else if (sign === ",") row.push("");
    else if (sign === "\n") rows.push([""]);
    else if (sign !== "\r") row[row.length - 1] += sign;
  }
  return rows.slice(0, -1);
}

test("the checksum is the published 24-bit one, in base 32", () => {
  // CRC-24/OPENPGP of "123456789" is 0x21CF02, the check value of its catalogue entry.
  const bits = 0x21cf02.toString(2).padStart(25, "0");
  const signs = bits.match(/.{5}/g).map((five) => "0123456789ABCDEFGHJKMNPQRSTVWXYZ"[parseInt(five, 2)]);
  assert.equal(checkCode(["123456789"]), signs.join(""));
});

test("every single wrong letter and every swap of neighbours is found", () => {
  const line = Object.values(SLIP).join("\n");
  const code = checkCode([line]);
  for (let at = 0; at < line.length; at += 1) {
    for (const letter of "abcdefghijklmnopqrstuvwxyz0123456789") {
      const wrong = line.slice(0, at) + letter + line.slice(at + 1);
      if (plain(wrong) !== plain(line)) assert.notEqual(checkCode([wrong]), code, wrong);
    }
    const swapped = line.slice(0, at) + (line[at + 1] ?? "") + line[at] + line.slice(at + 2);
    if (plain(swapped) !== plain(line)) assert.notEqual(checkCode([swapped]), code, swapped);
  }
});

/** @param {string} text */
function plain(text) {
  return text.normalize("NFD").replace(/\p{Mark}/gu, "").toLowerCase().replace(/\s+/g, " ").trim();
}

test("case, gaps and accents make no difference; what moved to another field does", () => {
  assert.equal(codeOf({ ...SLIP, name: " ana  NUNEZ" }), codeOf(SLIP));
  assert.notEqual(checkCode(["a b", "c"]), checkCode(["a", "b c"]));
});

test("a code is read as people copy it", () => {
  assert.equal(tidyCode(" o1-iL u"), "0111V");
});

test("a slip's line is read again", () => {
  assert.deepEqual(readLine(slipLine(SLIP)), { slip: SLIP, fault: null });
  const bars = { ...SLIP, name: "A | B\nC\u202ed" };
  assert.equal(readLine(slipLine(bars)).slip.name, "A B C d");
});

test("a line says what is wrong with it", () => {
  const line = slipLine(SLIP);
  assert.equal(readLine("hello").fault, "shape");
  assert.equal(readLine(line.replace("PENCILWOOD-1", "PENCILWOOD-9")).fault, "shape");
  assert.equal(readLine(line.replace("86", "68")).fault, "code");
  assert.equal(readLine(line.replace("86", "860")).fault, "score");
  assert.equal(readLine(line.replace("2026-01-31", "2026-02-31")).fault, "date");
  assert.equal(readLine(line.replace("Ana Núñez", " ")).fault, "name");
  assert.equal(checkSlip(SLIP, codeOf(SLIP).toLowerCase()).fault, null);
});

test("dates are those of the calendar", () => {
  assert.equal(isDate("2028-02-29"), true);
  for (const text of ["2026-02-29", "2026-13-01", "31.1.2026", "", "2026-1-1"]) {
    assert.equal(isDate(text), false, text);
  }
});

test("lines are gathered once, and faults are told with their line", () => {
  const other = { ...SLIP, name: "Bo" };
  const text = `${slipLine(SLIP)}\r\n\r\nnonsense\n${slipLine(SLIP)}\n${slipLine(other)}`;
  const found = gather(text, []);
  assert.deepEqual(found.added, [SLIP, other]);
  assert.equal(found.twice, 1);
  assert.deepEqual(found.faults, [{ line: 3, fault: "shape" }]);
  assert.equal(gather(text, found.added).twice, 3);
  assert.equal(isListed(other, found.added), true);
});

test("a list kept badly is read as far as it is one", () => {
  assert.deepEqual(takeUpList([SLIP, null, 3, { name: "x" }]), [SLIP]);
  assert.deepEqual(takeUpList("no"), []);
});

test("the table is read again by another reader, with quotes and accents", () => {
  const odd = { ...SLIP, name: 'Zoë "Z", Ltd' };
  const csv = asCsv([SLIP, odd], HEADINGS);
  assert.equal(csv.charCodeAt(0), 0xfeff);
  assert.ok(csv.endsWith("\r\n"));
  const rows = readCsv(csv.slice(1));
  assert.deepEqual(rows[0], HEADINGS);
  assert.deepEqual(rows[1], [...Object.values(SLIP), codeOf(SLIP)]);
  assert.equal(rows[2][0], 'Zoë "Z", Ltd');
});

test("no cell is a formula for a spreadsheet", () => {
  for (const name of ["=1+1", "+1", "-1", "@A1", " =1", "\u200b=1", "\uff1d1", "\t=1"]) {
    const [, row] = readCsv(asCsv([{ ...SLIP, name }], HEADINGS).slice(1));
    assert.equal(row[0], `'${name}`);
  }
  const [, row] = readCsv(asCsv([{ ...SLIP, name: "A-B=C" }], HEADINGS).slice(1));
  assert.equal(row[0], "A-B=C");
});

test("a date is told with its month as a word, in the reader's language", () => {
  const told = (/** @type {string} */ text, /** @type {string} */ language) => shownDate(text, language).replaceAll("\u00a0", " ");
  assert.equal(told("2026-11-28", "en"), "28 Nov 2026");
  assert.equal(told("2026-11-28", "es"), "28 nov 2026");
  assert.equal(told("2026-03-04", "en"), "4 Mar 2026");
  assert.equal(told("2026-13-04", "en"), "2026-13-04");
});
