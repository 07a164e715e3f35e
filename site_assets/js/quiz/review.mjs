/**
 * What comes back when: a rule that was broken returns the next day, and after each day on
 * which it is kept it waits longer. The gaps of 1, 3 and 7 days are this project's choice;
 * published trials favour spaced repeats and find no difference between equal and growing gaps.
 */

/** Days until a rule comes back: after a miss, and after each success that follows it. */
export const GAPS_DAYS = [1, 3, 7];
/** A rule broken a moment ago comes back after this many other vines, not at once. */
const VINES_BETWEEN = 2;
const MOST_RECENT = 12;
const EASIEST = "easy";

/**
 * @typedef {object} RuleMemory
 * @property {number} step  successes since the last miss
 * @property {number} due  number of the day from which it is asked again
 * @property {number} misses
 *
 * @typedef {object} Memory  what one device remembers of its learner
 * @property {Record<string, RuleMemory>} weak  rules that were broken and have to come back
 * @property {string[]} recent  vines practised last, the newest first
 * @property {Record<string, number>} today  rules broken now: vines practised since
 *
 * @typedef {{slug: string, rules: string[], level: string}} Vine  what a vine gives practice in
 */

/** @returns {Memory} */
export function freshMemory() {
  return { weak: {}, recent: [], today: {} };
}

/**
 * Remembers one practised vine.
 *
 * @param {Memory} memory
 * @param {Vine} vine
 * @param {readonly string[]} broken  rules that cost points
 * @param {number} day
 * @returns {Memory}
 */
export function remember(memory, vine, broken, day) {
  const today = Object.entries(memory.today).map(([rule, vines]) => [rule, vines + 1]);
  const recent = [vine.slug, ...memory.recent].slice(0, MOST_RECENT);
  return learn({ ...memory, recent, today: Object.fromEntries(today) }, vine.rules, broken, day);
}

/**
 * Remembers which rules were asked and which of them were broken.
 *
 * @param {Memory} memory
 * @param {readonly string[]} asked
 * @param {readonly string[]} broken
 * @param {number} day
 * @returns {Memory}
 */
export function learn(memory, asked, broken, day) {
  const weak = { ...memory.weak };
  const today = { ...memory.today };
  for (const rule of asked) {
    const known = weak[rule];
    if (known === undefined || broken.includes(rule)) continue;
    delete today[rule];
    if (known.due > day) continue;
    // A rule kept at all its returns is no longer weak.
    if (known.step + 1 >= GAPS_DAYS.length) delete weak[rule];
    else weak[rule] = { ...known, step: known.step + 1, due: day + GAPS_DAYS[known.step + 1] };
  }
  for (const rule of broken) {
    weak[rule] = { step: 0, due: day + GAPS_DAYS[0], misses: (weak[rule]?.misses ?? 0) + 1 };
    today[rule] = 0;
  }
  return { ...memory, weak, today };
}

/**
 * Rules whose day has come, the weakest first.
 *
 * @param {Memory} memory
 * @param {number} day
 */
export function dueRules(memory, day) {
  const due = Object.entries(memory.weak).filter(([, one]) => one.due <= day);
  due.sort(([, a], [, b]) => a.step - b.step || b.misses - a.misses || a.due - b.due);
  return due.map(([rule]) => rule);
}

/**
 * Memory for the choice of a next vine while one is still in hand, pruned or not: whoever asks
 * for another vine gets another one. It isn't to be kept, for the vine wasn't practised.
 *
 * @param {Memory} memory
 * @param {string} inHand  name of the vine, empty for none
 * @returns {Memory}
 */
export function passedOver(memory, inHand) {
  if (inHand === "" || memory.recent[0] === inHand) return memory;
  return { ...memory, recent: [inHand, ...memory.recent] };
}

/**
 * The vines to choose from. Whoever has practised none yet begins with one of the easiest level,
 * unless they chose another.
 *
 * @param {readonly Vine[]} vines
 * @param {string} level  "all" for every one
 * @param {Memory} memory
 * @param {string} inHand  name of the vine in hand, empty for none
 * @returns {readonly Vine[]}
 */
export function ofLevel(vines, level, memory, inHand) {
  const isFirst = inHand === "" && memory.recent.length === 0;
  const wanted = level === "all" && isFirst ? EASIEST : level;
  const own = vines.filter((vine) => vine.level === wanted);
  return own.length > 0 ? own : vines;
}

/**
 * The next vine: the one that asks most of the rules that are due, but neither a vine of the
 * last few nor, where it can be helped, the same rules twice running: kinds of cut are mixed.
 *
 * @param {Memory} memory
 * @param {readonly Vine[]} vines
 * @param {number} day
 * @param {() => number} [random]  from 0 up to 1
 * @returns {Vine}
 */
export function nextVine(memory, vines, day, random = Math.random) {
  const wanted = new Set(wantedRules(memory, day));
  const recent = memory.recent.slice(0, Math.min(MOST_RECENT, vines.length - 1));
  const fresh = vines.filter(({ slug }) => !recent.includes(slug));
  const last = vines.find(({ slug }) => slug === memory.recent[0]);
  let best = fresh[0];
  let bestWorth = -Infinity;
  for (const vine of fresh) {
    const hits = vine.rules.filter((rule) => wanted.has(rule)).length;
    const repeats = last?.rules.filter((rule) => vine.rules.includes(rule)).length ?? 0;
    const worth = 4 * hits - repeats + random();
    if (worth > bestWorth) [best, bestWorth] = [vine, worth];
  }
  return best;
}

/**
 * @param {Memory} memory
 * @param {number} day
 */
function wantedRules(memory, day) {
  const again = Object.entries(memory.today).filter(([, vines]) => vines >= VINES_BETWEEN);
  return [...dueRules(memory, day), ...again.map(([rule]) => rule)];
}

/**
 * Kept memory, checked entry by entry: whatever isn't one is forgotten.
 *
 * @param {unknown} kept
 * @returns {Memory}
 */
export function takeUpMemory(kept) {
  const memory = freshMemory();
  if (typeof kept !== "object" || kept === null) return memory;
  const { weak, recent, today } = /** @type {Record<string, unknown>} */ (kept);
  for (const [rule, one] of Object.entries(weak ?? {})) {
    if (isRuleMemory(one)) memory.weak[rule] = { step: one.step, due: one.due, misses: one.misses };
  }
  for (const [rule, vines] of Object.entries(today ?? {})) {
    if (Number.isInteger(vines) && vines >= 0) memory.today[rule] = vines;
  }
  if (Array.isArray(recent)) {
    memory.recent = recent.filter((slug) => typeof slug === "string").slice(0, MOST_RECENT);
  }
  return memory;
}

/**
 * @param {unknown} one
 * @returns {one is RuleMemory}
 */
function isRuleMemory(one) {
  if (typeof one !== "object" || one === null) return false;
  const { step, due, misses } = /** @type {Record<string, unknown>} */ (one);
  const whole = [step, due, misses].every((number) => Number.isInteger(number));
  return whole && Number(step) >= 0 && Number(step) < GAPS_DAYS.length;
}
