/**
 * Looks up and adds what a pruned vine is charged. There is no rule in here: every figure
 * comes from the scoring sheet, which the generator compiled from the handbook's rules.
 */

import { chargesOfTying } from "./tying.mjs";

/** @import {Broken, DoneCut, PassName, Result, Row, Sheet, Where} from "./types.mjs" */

/** @type {readonly PassName[]} */
export const PASSES = ["rough", "thinning-out", "fine", "tie"];

/**
 * The score of the wood that is left, and apart from it the score of how it was cut.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states  for each piece its buds (cane) or 1 (older wood), 0 when gone
 * @param {readonly DoneCut[]} doneCuts  in the order in which they were made
 * @returns {Result}
 */
export function score(sheet, states, doneCuts) {
  const broken = [
    ...chargesOfPieces(sheet, states),
    ...chargesOfNeighbours(sheet, states),
    ...chargesOfVine(sheet, states),
  ];
  const lost = total(broken);
  const points = Math.max(0, 100 - Math.max(0, lost - sheet.planLost));
  const capped = broken.some((one) => one.must);
  const vineScore = capped ? Math.min(points, sheet.passMark - 1) : points;
  const cutting = [...chargesOfCuts(sheet, doneCuts), ...chargesOfTying(sheet, states, doneCuts, charged)];
  return {
    score: vineScore,
    lost,
    passed: vineScore >= sheet.passMark,
    broken,
    cutting: { score: Math.max(0, 100 - total(cutting)), broken: cutting },
  };
}

/**
 * Indices of the positions at which a living bud is left, along the line.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @returns {number[]}
 */
export function spurs(sheet, states) {
  const kept = new Set();
  sheet.pieces.forEach((piece, number) => {
    if (piece.kind === "cane" && piece.alive === 1 && states[number] > 0) kept.add(piece.position);
  });
  return sheet.positions.map((_, number) => number).filter((number) => kept.has(number));
}

/**
 * Counted buds left on the vine.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 */
export function budsKept(sheet, states) {
  return sheet.pieces.reduce(
    (sum, piece, number) => sum + (piece.kind === "cane" ? states[number] : 0),
    0,
  );
}

/**
 * Stretches of arm without a spur: from end to end of the line, by way of every spur. Around a
 * head there are no ends, and the last spur is the first one's neighbour.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @returns {{mm: number, where: Where}[]}
 */
export function stretches(sheet, states) {
  if (sheet.around !== undefined) return stretchesAround(sheet, states);
  const kept = spurs(sheet, states).map((number) => sheet.positions[number]);
  /** @type {{y: number, name: string | null}[]} */
  const marks = [
    { y: sheet.ends[0], name: null },
    ...kept.map((position) => ({ y: position.y, name: position.name })),
    { y: sheet.ends[1], name: null },
  ];
  return marks.slice(1).map((mark, number) => ({
    mm: mark.y - marks[number].y,
    where: stretchBetween(marks[number].name, mark.name),
  }));
}

/**
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @returns {{mm: number, where: Where}[]}
 */
function stretchesAround(sheet, states) {
  const kept = spurs(sheet, states);
  if (kept.length > 1) {
    return spacings(sheet, states).map(({ mm, where }) => ({
      mm,
      where: { ...where, kind: "stretch" },
    }));
  }
  const positions = kept.map((number) => sheet.positions[number].name);
  return [{ mm: sheet.around ?? 0, where: { kind: "stretch", positions } }];
}

/**
 * @param {string | null} from
 * @param {string | null} to
 * @returns {Where}
 */
function stretchBetween(from, to) {
  const positions = [from, to].filter((name) => name !== null);
  if (positions.length === 2) return { kind: "stretch", positions };
  if (positions.length === 0) return { kind: "stretch", positions };
  return { kind: "stretch", positions, end: from === null ? "left" : "right" };
}

/**
 * Distances between neighbouring spurs that are left.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @returns {{mm: number, where: Where}[]}
 */
export function spacings(sheet, states) {
  const kept = spurs(sheet, states).map((number) => sheet.positions[number]);
  /** @type {{mm: number, where: Where}[]} */
  const pairs = kept.slice(1).map((position, number) => ({
    mm: position.x - kept[number].x,
    where: { kind: "pair", positions: [kept[number].name, position.name] },
  }));
  if (sheet.around === undefined || kept.length < 2) return pairs;
  const [first, last] = [kept[0], kept[kept.length - 1]];
  const mm = first.x + sheet.around - last.x;
  return [...pairs, { mm, where: { kind: "pair", positions: [last.name, first.name] } }];
}

/**
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @returns {Broken[]}
 */
function chargesOfPieces(sheet, states) {
  return sheet.pieces.flatMap((piece, number) => {
    const living = piece.above.some((other) => states[other] > 0) ? 1 : 0;
    const charges = piece.charges[states[number]][living];
    return charged(sheet, charges, { kind: "piece", part: piece.name }, { buds: states[number] });
  });
}

/**
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @returns {Broken[]}
 */
function chargesOfNeighbours(sheet, states) {
  return [
    ...spacings(sheet, states).flatMap(({ mm, where }) =>
      charged(sheet, lookUp(sheet.crowded, mm), where, { gap_mm: mm }),
    ),
    ...stretches(sheet, states).flatMap(({ mm, where }) =>
      charged(sheet, lookUp(sheet.blank, mm), where, { gap_mm: mm }),
    ),
  ];
}

/**
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 * @returns {Broken[]}
 */
function chargesOfVine(sheet, states) {
  const buds = budsKept(sheet, states);
  const wounds = largeWounds(sheet, states);
  return [
    ...charged(sheet, lookUp(sheet.buds, buds), { kind: "vine" }, { buds }),
    ...charged(sheet, lookUp(sheet.wounds, wounds), { kind: "vine" }, { wounds }),
    ...(sheet.tallies ?? []).flatMap((tally) => {
      const count = tallied(tally, states);
      return charged(sheet, lookUp(tally.steps, count), { kind: "vine" }, { count });
    }),
  ];
}

/**
 * How many are left of something that the vine's form counts.
 *
 * @param {import("./types.mjs").Tally} tally
 * @param {readonly number[]} states
 */
function tallied(tally, states) {
  return states.reduce((sum, state, number) => sum + tally.counts[number][state], 0);
}

/**
 * Large cut faces; wood that fell with the wood below it has none of its own.
 *
 * @param {Sheet} sheet
 * @param {readonly number[]} states
 */
function largeWounds(sheet, states) {
  return sheet.pieces.filter(
    (piece, number) =>
      piece.wound === 1 && states[number] === 0 && (piece.grows < 0 || states[piece.grows] > 0),
  ).length;
}

/**
 * @param {Sheet} sheet
 * @param {readonly DoneCut[]} doneCuts
 * @returns {Broken[]}
 */
function chargesOfCuts(sheet, doneCuts) {
  let latest = 0;
  return doneCuts.flatMap((cut, number) => {
    if (cut.tied !== undefined) return [];
    const pass = PASSES.indexOf(cut.pass);
    const late = pass < latest;
    latest = Math.max(latest, pass);
    const thickness = { thickness_mm: pieceOf(sheet, cut).thickness };
    /** @type {Where} */
    const where = { kind: "cut", part: cut.part, cut: number };
    return tablesOfCut(sheet, cut, late).flatMap((charges) =>
      charged(sheet, charges, where, thickness),
    );
  });
}

/**
 * A cut that comes too late is charged for that, and no longer for belonging elsewhere.
 *
 * @param {Sheet} sheet
 * @param {DoneCut} cut
 * @param {boolean} late  whether a cut of a later pass was made before
 * @returns {number[]}  indices of charge lists
 */
function tablesOfCut(sheet, cut, late) {
  const { pass, backwards, tool, stub } = sheet.cutting;
  const { shorten, remove } = pass[cut.pass];
  const inPass = cut.buds === null ? remove : shorten[cut.buds - 1];
  const order = late ? backwards : inPass;
  const byTool = tool[pieceOf(sheet, cut).thickness][cut.tool];
  return cut.buds === null ? [order, byTool] : [order, byTool, stub[cut.stub]];
}

/**
 * @param {Sheet} sheet
 * @param {DoneCut} cut
 */
function pieceOf(sheet, cut) {
  const piece = sheet.pieces.find((one) => one.name === cut.part);
  if (piece === undefined) throw new RangeError(`The scoring sheet has no wood ${cut.part}.`);
  return piece;
}

/**
 * @param {readonly Row[]} rows
 * @param {number} value
 * @returns {number}  index of a charge list; 0, the empty list, when no row holds the value
 */
function lookUp(rows, value) {
  const row = rows.find(([limit]) => limit === null || limit >= value);
  return row === undefined ? 0 : row[1];
}

/**
 * @param {Sheet} sheet
 * @param {number} charges
 * @param {Where} where
 * @param {import("./types.mjs").Facts} [measured]  facts that only the page can know
 * @returns {Broken[]}
 */
function charged(sheet, charges, where, measured = {}) {
  return sheet.charges[charges].map(([number, points, facts]) => {
    const { rule, name, must } = sheet.messages[number];
    return { message: name, rule, must, points, facts: { ...measured, ...facts }, where };
  });
}

/** @param {readonly Broken[]} broken */
function total(broken) {
  return broken.reduce((sum, one) => sum + one.points, 0);
}
