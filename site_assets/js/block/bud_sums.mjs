/** Buds to leave: from prunings, from the crop wanted, after winter, and as many as fit. */

import { answer, figure, sentence } from "./answer.mjs";
import { livingVines } from "./area_sums.mjs";
import { Fraction, ONE } from "./fraction.mjs";
import { BlockError, Range, fewerDigits } from "./range.mjs";

/** @import {Answer, Given, Sentence} from "./types.mjs" */

const POUND_G = Fraction.of("453.59237");

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function balancedBuds({ prunings_g, formula, below_one_lb, least_buds, most_buds }) {
  if (least_buds && most_buds && most_buds.likely.below(least_buds.likely)) {
    throw new BlockError("floor-above-cap", "least_buds");
  }
  const pounds = prunings_g.over(POUND_G);
  const { first, further } = formula;
  const buds = pounds.each((/** @type {Fraction} */ pound) => {
    if (!pound.below(ONE)) return first.plus(further.times(pound.minus(ONE)));
    return below_one_lb === "scale" ? first.times(pound) : first;
  });
  const name = pounds.likely.below(ONE) ? `below-one-lb-${below_one_lb}` : "first-and-further";
  /** @type {Sentence["facts"]} */
  const pound = { pound: ["kilograms", POUND_G], pounds: ["number", pounds] };
  const steps = [
    sentence("pounds", {
      lb: ["pounds", prunings_g],
      kg: ["kilograms", prunings_g],
      ...pound,
    }),
    sentence(name, {
      first: ["number", first],
      further: ["number", further],
      buds: ["buds", buds],
      ...pound,
    }),
  ];
  const kept = clamped(buds, least_buds, most_buds, steps);
  return answer("buds", [figure("buds", "buds", kept)], steps);
}

/**
 * @param {Range} buds
 * @param {Range | undefined} least
 * @param {Range | undefined} most
 * @param {Sentence[]} steps
 */
function clamped(buds, least, most, steps) {
  let kept = buds;
  if (least) {
    if (kept.likely.below(least.likely)) steps.push(sentence("floored", { least: ["buds", least] }));
    kept = kept.atLeast(least.likely);
  }
  if (most) {
    if (most.likely.below(kept.likely)) steps.push(sentence("capped", { most: ["buds", most] }));
    kept = kept.atMost(most.likely);
  }
  return kept;
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function budsByWeight({ prunings_g, buds_per_g }) {
  const buds = prunings_g.times(buds_per_g);
  return answer(
    "buds-by-weight",
    [figure("buds", "buds", buds)],
    [
      sentence("by-weight", {
        prunings: ["vine-weight", prunings_g],
        rate: ["buds-on-weight", buds_per_g],
        buds: ["buds", buds],
      }),
    ],
  );
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function budsForCrop(given) {
  const { target_crop_g_per_m2, row_mm, vine_mm, missing_share } = given;
  const { shoots_per_bud, clusters_per_shoot, cluster_g } = given;
  const vines = livingVines(row_mm, vine_mm, missing_share);
  const vineCrop = target_crop_g_per_m2.over(vines);
  const budCrop = shoots_per_bud.times(clusters_per_shoot).times(cluster_g);
  const buds = vineCrop.over(budCrop);
  const steps = [
    sentence("crop-of-a-vine", {
      crop: ["crop-on-area", target_crop_g_per_m2],
      per_ha: ["vines-per-hectare", vines],
      per_acre: ["vines-per-acre", vines],
      vine: ["vine-weight", vineCrop],
    }),
    sentence("crop-of-a-bud", {
      shoots: ["number", shoots_per_bud],
      clusters: ["number", clusters_per_shoot],
      cluster: ["cluster-weight", cluster_g],
      bud: ["cluster-weight", budCrop],
    }),
    sentence("buds-for-crop", {
      vine: ["vine-weight", vineCrop],
      bud: ["cluster-weight", budCrop],
      buds: ["buds", buds],
    }),
  ];
  const figures = [figure("buds", "buds", buds), figure("vine-crop", "vine-weight", vineCrop)];
  return answer("buds-for-crop", figures, steps);
}

/** @param {number} percent */
const share = (percent) => new Fraction(BigInt(percent), 100n);

/** @type {Record<string, (dead: Fraction) => Fraction | null>} */
const FAMILIES = {
  cornell: (dead) => {
    if (dead.below(share(20))) return ONE;
    return share(80).below(dead) ? null : ONE.plus(dead);
  },
  purdue: (dead) => {
    for (const [mostDead, more] of [[15, 0], [35, 35], [50, 50]]) {
      if (!share(mostDead).below(dead)) return ONE.plus(share(more));
    }
    return null;
  },
  full: (dead) => (dead.below(ONE) ? ONE.over(ONE.minus(dead)) : null),
};

/** @type {Record<string, string>} */
const NO_NUMBER = { cornell: "beyond-cornell", purdue: "prune-little", full: "all-dead" };

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function budsAfterWinter({ wanted_buds, dead_share, winter_rule }) {
  /** @type {Fraction[]} */
  const factors = dead_share.three.map((/** @type {Fraction} */ dead) => {
    const factor = FAMILIES[winter_rule](dead);
    if (factor === null) throw new BlockError(NO_NUMBER[winter_rule], "dead_share");
    return factor;
  });
  const digits = fewerDigits(wanted_buds.digits, dead_share.digits);
  // Nobody leaves a part of a bud, and the living ones are a share of those that are left.
  /** @type {Fraction[]} */
  const buds = factors.map((factor, n) => wanted_buds.three[n].times(factor).nearest());
  const alive = buds.map((many, n) => many.times(ONE.minus(dead_share.three[n])));
  const leave = Range.spread(buds, digits);
  const living = Range.spread(alive, digits);
  /** @type {Sentence["facts"]} */
  const facts = {
    wanted: ["buds", wanted_buds],
    dead: ["share", dead_share],
    more: ["share", factors[1].minus(ONE)],
    buds: ["buds", leave],
    alive: ["buds", living],
  };
  const unchanged = factors[1].equals(ONE);
  const name = unchanged ? "same" : winter_rule === "full" ? "full" : "more";
  return answer(
    "winter",
    [figure("buds", "buds", leave), figure("living-buds", "buds", living)],
    [sentence(`winter-${name}`, facts), sentence("winter-alive", facts)],
  );
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function roomOnArms({ arms, arm_mm, spur_spacing_mm, buds_per_spur }) {
  const onArm = arm_mm.over(spur_spacing_mm).each((/** @type {Fraction} */ value) => value.floor());
  /** @type {Range} */
  const spurs = onArm.times(arms);
  if (spurs.low.below(ONE)) throw new BlockError("no-room", "spur_spacing_mm");
  const buds = spurs.times(buds_per_spur).each((/** @type {Fraction} */ many) => many.nearest());
  const density = buds.over(arm_mm.times(arms));
  /** @type {Sentence["facts"]} */
  const facts = {
    arms: ["arms", arms],
    arm: ["arm", arm_mm],
    spacing: ["spur-spacing", spur_spacing_mm],
    spurs: ["spurs", spurs],
    each: ["number", buds_per_spur],
    buds: ["buds", buds],
    density: ["on-length", density],
  };
  const figures = [
    figure("room", "buds", buds),
    figure("spurs", "spurs", spurs),
    figure("density", "on-length", density),
  ];
  return answer("room", figures, ["spurs", "room", "density"].map((name) => sentence(name, facts)));
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function budsThatFit({ wanted_buds, ...arms }) {
  const room = roomOnArms(arms);
  const held = room.figures[0].value;
  const buds = new Range(
    wanted_buds.low.smaller(held.low),
    wanted_buds.likely.smaller(held.likely),
    wanted_buds.high.smaller(held.high),
    wanted_buds.digits,
  );
  const order = held.likely.compare(wanted_buds.likely);
  const reason = order === 0 ? "same" : order < 0 ? "arms" : "formula";
  /** @type {Sentence["facts"]} */
  const facts = { wanted: ["buds", wanted_buds], room: ["buds", held], buds: ["buds", buds] };
  return answer(
    "fit",
    [figure("buds", "buds", buds), ...room.figures],
    [...room.steps, sentence("smaller", facts)],
    [sentence(`bound-by-${reason}`, facts)],
  );
}
