/** How many buds a vine should keep: those totals that cost nothing on its scoring sheet. */

/** @import {Sheet} from "./types.mjs" */

/**
 * @param {Sheet} sheet
 * @returns {{least: number, most: number | null} | null}  `most` is null where no total is too much;
 *   all is null where buds are not counted, or every total costs something
 */
export function budGoal({ buds, charges }) {
  const isFree = (/** @type {Sheet["buds"][number]} */ [, charge]) => charges[charge].length === 0;
  const first = buds.findIndex(isFree);
  if (first < 0) return null;
  const after = buds.findIndex((row, number) => number > first && !isFree(row));
  const least = first === 0 ? 0 : Number(buds[first - 1][0]) + 1;
  const [most] = buds[(after < 0 ? buds.length : after) - 1];
  return least === 0 && most === null ? null : { least, most };
}

/**
 * @param {Sheet} sheet
 * @param {import("./words.mjs").Words} words
 * @param {"hint" | "said"} where
 * @returns {string}  empty where the vine has no goal
 */
export function goalWords(sheet, words, where) {
  const goal = budGoal(sheet);
  if (goal === null) return "";
  const facts = { least: goal.least, most: goal.most ?? 0 };
  return words.say(`goal.${where}`, { goal: words.say(shapeOf(goal), facts) });
}

/** @param {{least: number, most: number | null}} goal */
function shapeOf({ least, most }) {
  if (most === null) return "goal.least";
  if (least === 0) return "goal.most";
  return least === most ? "goal.one" : "goal.range";
}
