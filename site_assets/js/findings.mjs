/** Sorts what was charged the way a learner reads it: rule by rule, the weightiest first. */

/** @import {Broken, ShownCut} from "./types.mjs" */

/**
 * @typedef {object} Place
 * @property {number | null} number  the number on the drawing; null for the vine as a whole
 * @property {Broken} broken
 *
 * @typedef {object} Finding
 * @property {string} rule
 * @property {boolean} must
 * @property {number} points
 * @property {Place[]} places
 */

/**
 * @param {readonly Broken[]} broken
 * @returns {Finding[]}
 */
export function byRule(broken) {
  /** @type {Map<string, Broken[]>} */
  const rules = new Map();
  for (const one of broken) rules.set(one.rule, [...(rules.get(one.rule) ?? []), one]);
  const found = [...rules].map(([rule, all]) => ({
    rule,
    must: all.some((one) => one.must),
    points: all.reduce((sum, one) => sum + one.points, 0),
    all,
  }));
  found.sort((a, b) => Number(b.must) - Number(a.must) || b.points - a.points);
  let number = 0;
  return found.map(({ all, ...rest }) => ({
    ...rest,
    places: all.map((one) => ({
      number: one.where.kind === "vine" ? null : (number += 1),
      broken: one,
    })),
  }));
}

/**
 * Charges for cuts that are told in the same words, joined: twenty cuts with the wrong tool are
 * one line, however thick the wood, where the words leave that out.
 *
 * @param {readonly Broken[]} broken
 * @param {(one: Broken) => string} tell
 * @returns {{first: Broken, points: number, parts: string[]}[]}
 */
export function byWords(broken, tell) {
  /** @type {Map<string, {first: Broken, points: number, parts: string[]}>} */
  const lines = new Map();
  for (const one of broken) {
    const key = JSON.stringify([one.rule, tell(one)]);
    const line = lines.get(key) ?? { first: one, points: 0, parts: [] };
    line.points += one.points;
    line.parts.push(one.where.part ?? "");
    lines.set(key, line);
  }
  return [...lines.values()];
}

/**
 * Cuts of the plan or the answer that share pass, buds and reason, joined.
 *
 * @param {readonly ShownCut[]} cuts
 * @returns {(Omit<ShownCut, "part"> & {parts: string[]})[]}
 */
export function byReason(cuts) {
  /** @type {(Omit<ShownCut, "part"> & {parts: string[]})[]} */
  const groups = [];
  for (const { part, ...rest } of cuts) {
    const last = groups[groups.length - 1];
    const same =
      last?.pass === rest.pass &&
      last.buds === rest.buds &&
      last.tied === rest.tied &&
      last.why === rest.why;
    if (same) last.parts.push(part);
    else groups.push({ ...rest, parts: [part] });
  }
  return groups;
}
