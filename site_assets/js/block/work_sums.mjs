/** Hours, people and pay of pruning, and a renovation year by year. */

import { answer, figure, sentence } from "./answer.mjs";
import { Fraction, ONE, ZERO } from "./fraction.mjs";
import { BlockError, Range } from "./range.mjs";

/** @import {Answer, Figure, Given, Sentence} from "./types.mjs" */

const MOST_YEARS = 30;
const SETTLED_YEARS = 3;

/** @param {Range} value */
const roundedUp = (value) => value.each((one) => one.ceiling()).counted();

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function crew(given) {
  const { vines, seconds_per_vine, people, days, pay_per_s, hand_seconds_after, machine_s } = given;
  if (!people && !days) throw new BlockError("people-or-days", "people");
  if (!hand_seconds_after && machine_s) {
    throw new BlockError("machine-without-hand", "hand_seconds_after");
  }
  const work = vines.times(seconds_per_vine);
  const figures = [figure("work", "hours", work)];
  const steps = [
    sentence("work", {
      vines: ["vines", vines],
      each: ["seconds", seconds_per_vine],
      work: ["hours", work],
    }),
  ];
  addCrew(figures, steps, work, given);
  if (pay_per_s) {
    const cost = work.times(pay_per_s);
    figures.push(figure("pay", "money", cost));
    steps.push(
      sentence("pay", { work: ["hours", work], pay: ["pay", pay_per_s], cost: ["money", cost] }),
    );
  }
  if (hand_seconds_after) addPrePruned(figures, steps, work, given);
  return answer("crew", figures, steps);
}

/**
 * @param {Figure[]} figures
 * @param {Sentence[]} steps
 * @param {Range} work
 * @param {Given} given
 */
function addCrew(figures, steps, work, { day_s, people, days }) {
  /** @type {Sentence["facts"]} */
  const facts = { work: ["hours", work], day: ["hours", day_s] };
  if (people) {
    const needed = roundedUp(work.over(people.times(day_s)));
    figures.push(figure("days", "days", needed));
    steps.push(sentence("days", { ...facts, people: ["people", people], days: ["days", needed] }));
  }
  if (days) {
    const hands = roundedUp(work.over(days.times(day_s)));
    figures.push(figure("people", "people", hands));
    steps.push(sentence("people", { ...facts, days: ["days", days], people: ["people", hands] }));
  }
}

/**
 * @param {Figure[]} figures
 * @param {Sentence[]} steps
 * @param {Range} work
 * @param {Given} given
 */
function addPrePruned(figures, steps, work, given) {
  const { vines, hand_seconds_after, pay_per_s, machine_s, machine_pay_per_s } = given;
  const left = vines.times(hand_seconds_after);
  const saved = work.minus(left).atLeast(ZERO);
  figures.push(figure("work-after", "hours", left), figure("saved", "hours", saved));
  steps.push(
    sentence("pre-pruned", {
      vines: ["vines", vines],
      each: ["seconds", hand_seconds_after],
      left: ["hours", left],
      saved: ["hours", saved],
    }),
  );
  if (!pay_per_s || !machine_s || !machine_pay_per_s) return;
  const [hand, machine] = [left.times(pay_per_s), machine_s.times(machine_pay_per_s)];
  const cost = hand.plus(machine);
  figures.push(figure("pay-after", "money", cost));
  steps.push(
    sentence("pay-after", {
      hand: ["money", hand],
      machine: ["money", machine],
      cost: ["money", cost],
    }),
  );
}

/**
 * How many vines are cut in which year, counted from 1.
 *
 * @param {Given} given
 * @returns {Map<number, Fraction>}
 */
function groups({ way, vines, rows, wait_years, share_a_year }) {
  const all = vines.likely;
  const two = Fraction.of(2);
  const wait = wait_years.likely.toNumber();
  if (way === "every-vine") return new Map([[1, all]]);
  if (way === "every-other-vine") return halves(all, all.over(two).ceiling(), wait);
  if (way === "every-other-row") {
    if (!rows || all.below(rows.likely)) throw new BlockError("rows-needed", "rows");
    const first = all.times(rows.likely.over(two).ceiling()).over(rows.likely).floor();
    return halves(all, first, wait);
  }
  if (!share_a_year) throw new BlockError("share-needed", "share_a_year");
  const each = all.times(share_a_year.likely).ceiling();
  const found = new Map();
  let left = all;
  for (let year = 1; left.sign > 0; year += 1) {
    found.set(year, each.smaller(left));
    left = left.minus(each);
  }
  return found;
}

/**
 * @param {Fraction} all
 * @param {Fraction} first
 * @param {number} wait
 * @returns {Map<number, Fraction>}
 */
function halves(all, first, wait) {
  if (!first.below(all)) return new Map([[1, all]]);
  return new Map([
    [1, first],
    [1 + wait, all.minus(first)],
  ]);
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function renovation(given) {
  const { way, vines, crop_g, renewal_seconds } = given;
  const cut = groups(given);
  const last = Math.max(...cut.keys()) + SETTLED_YEARS;
  if (last > MOST_YEARS) {
    throw new BlockError("too-many-years", "share_a_year", { most: `${MOST_YEARS}` });
  }
  const years = Array.from({ length: last }, (_, n) => yearOf(n + 1, cut, given));
  /** @param {Range[]} parts */
  const total = (parts) => parts.reduce((sum, part) => sum.plus(part), Range.of(0));
  const lost = total(years.map((year) => year.lost));
  // The last years of a renovation bear a full crop.
  const losing = years.filter((year) => year.share.low.below(ONE)).length;
  /** @type {Figure[]} */
  const figures = [
    { ...figure("lost-crop", "block-weight", lost), ...(losing > 0 ? { years: losing } : {}) },
    figure("work", "hours", total(years.map((year) => year.work))),
    figure("full-from", "number", Range.of(last)),
  ];
  const costs = years.flatMap((year) => (year.cost ? [year.cost] : []));
  if (costs.length > 0) figures.push(figure("cost", "money", total(costs)));
  const first = years[0];
  /** @type {Sentence["facts"]} */
  const facts = {
    vines: ["vines", vines],
    each: ["vine-weight", crop_g],
    full: ["block-weight", crop_g.times(vines)],
    cut: ["vines", first.cut],
    share: ["share", first.share],
    crop: ["block-weight", first.crop],
    time: ["minutes", renewal_seconds],
    work: ["hours", first.work],
    lost: ["block-weight", lost],
  };
  const names = ["full-crop", "first-year", "first-work", "lost-crop"];
  return answer(
    "renovation",
    figures,
    names.map((name) => sentence(name, facts)),
    [sentence(`way-${way}`)],
    years.map((year) => year.row),
  );
}

/**
 * Share of a full crop in the given summer after the cut; before the cut, all of it.
 *
 * @param {Given} given
 * @param {number} years
 */
function recovered({ recovery_first, recovery_second, recovery_third }, years) {
  return [recovery_first, recovery_second, recovery_third][years] ?? Range.of(1);
}

/**
 * @param {number} number
 * @param {Map<number, Fraction>} cut
 * @param {Given} given
 */
function yearOf(number, cut, given) {
  const { vines, crop_g, renewal_seconds, pay_per_s, price_per_g } = given;
  let bearing = Range.of(0);
  for (const [year, count] of cut) {
    bearing = bearing.plus(recovered(given, number - year).times(count));
  }
  const share = bearing.over(vines.likely);
  const full = crop_g.times(vines);
  const crop = full.times(share);
  const lost = full.times(new Range(ONE, ONE, ONE).minus(share).atLeast(ZERO));
  const cutNow = cut.get(number) ?? ZERO;
  const work = renewal_seconds.times(cutNow);
  /** @type {Range | null} */
  let cost = null;
  if (pay_per_s) cost = Range.of(0).plus(work.times(pay_per_s));
  if (price_per_g) cost = (cost ?? Range.of(0)).plus(lost.times(price_per_g));
  const row = [
    figure("year", "number", Range.of(number)),
    figure("cut", "vines", Range.of(cutNow)),
    figure("crop-share", "share", share),
    figure("year-crop", "block-weight", crop),
    figure("work", "hours", work),
    ...(cost ? [figure("cost", "money", cost)] : []),
  ];
  return { cut: cutNow, share, crop, lost, work, cost, row };
}
