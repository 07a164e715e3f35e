/** Balance of crop and growth, room for leaves, fruit that leaves ripen, shoots to take off. */

import { answer, figure, sentence } from "./answer.mjs";
import { Fraction, ZERO } from "./fraction.mjs";
import { BlockError, Range } from "./range.mjs";

/** @import {Answer, Given, Sentence} from "./types.mjs" */

/**
 * Where a value lies: under, inside or over a band, or unsure when it reaches past an edge.
 *
 * @param {Range} value
 * @param {Fraction} low
 * @param {Fraction} high
 */
function verdict(value, low, high) {
  const sides = [value.low, value.high].map((one) =>
    one.below(low) ? "under" : high.below(one) ? "over" : "inside",
  );
  return sides[0] === sides[1] ? sides[0] : "unsure";
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function cropLoad({ crop_g, prunings_g, crop_load_band, bands }) {
  const ratio = crop_g.over(prunings_g);
  const [low, high] = bands.crop_load_band[crop_load_band].map(Fraction.of);
  /** @type {Sentence["facts"]} */
  const facts = {
    crop: ["vine-weight", crop_g],
    prunings: ["vine-weight", prunings_g],
    ratio: ["number", ratio],
    low: ["number", low],
    high: ["number", high],
  };
  return answer(
    "crop-load",
    [figure("crop-load", "number", ratio)],
    [sentence("crop-load", facts)],
    [sentence(`crop-load-${verdict(ratio, low, high)}`, facts)],
  );
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function vigour({ shoots_per_mm, cane_g, vigour_band, bands }) {
  const prunings = shoots_per_mm.times(cane_g);
  const [low, high] = bands.vigour_band[vigour_band].map(Fraction.of);
  /** @type {Sentence["facts"]} */
  const facts = {
    shoots: ["on-length", shoots_per_mm],
    cane: ["small-weight", cane_g],
    prunings: ["prunings-on-length", prunings],
    low: ["prunings-on-length", low],
    high: ["prunings-on-length", high],
  };
  return answer(
    "vigour",
    [figure("prunings-on-length", "prunings-on-length", prunings)],
    [sentence("vigour", facts)],
    [sentence(`vigour-${verdict(prunings, low, high)}`, facts)],
  );
}

/**
 * @param {Fraction} room
 * @param {Fraction} internode
 */
function leavesThatFit(room, internode) {
  return room.over(internode).floor().larger(ZERO);
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function roomForLeaves({ trimming_mm, arm_height_mm, climb_mm, shoot_mm, nodes }) {
  const internode = shoot_mm.over(nodes);
  const feet = arm_height_mm.plus(climb_mm);
  if (!feet.likely.below(trimming_mm.likely)) {
    throw new BlockError("arm-above-trimming", "trimming_mm");
  }
  const room = trimming_mm.minus(feet);
  const leaves = new Range(
    leavesThatFit(room.low, internode.high),
    leavesThatFit(room.likely, internode.likely),
    leavesThatFit(room.high, internode.low),
  );
  /** @type {Sentence["facts"]} */
  const facts = {
    trimming: ["short", trimming_mm],
    arm: ["short", arm_height_mm],
    climb: ["short", climb_mm],
    room: ["short", room],
    shoot: ["short", shoot_mm],
    nodes: ["nodes", nodes],
    internode: ["short", internode],
    leaves: ["leaves", leaves],
  };
  const figures = [figure("leaves", "leaves", leaves), figure("internode", "short", internode)];
  const names = ["internode", "leaf-room", "leaves"];
  return answer("leaves", figures, names.map((name) => sentence(name, facts)));
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function fruitOfLeaves({ leaves_per_shoot, leaf_mm2, leaf_mm2_per_g, shoots_per_mm, fruit_g }) {
  const leaf = leaves_per_shoot.times(leaf_mm2);
  const ripens = leaf.over(leaf_mm2_per_g);
  /** @type {Sentence["facts"]} */
  const facts = {
    leaves: ["number", leaves_per_shoot],
    size: ["leaf-size", leaf_mm2],
    leaf: ["leaf-area", leaf],
    need: ["leaf-on-weight", leaf_mm2_per_g],
    ripens: ["small-weight", ripens],
  };
  const figures = [figure("ripens", "small-weight", ripens), figure("leaf-area", "leaf-area", leaf)];
  const steps = [sentence("leaf-area", facts), sentence("ripens", facts)];
  if (shoots_per_mm) {
    const canopy = shoots_per_mm.times(leaf);
    figures.push(figure("leaf-on-length", "leaf-on-length", canopy));
    const parts = { shoots: ["on-length", shoots_per_mm], canopy: ["leaf-on-length", canopy] };
    steps.push(sentence("leaf-on-length", { ...facts, .../** @type {any} */ (parts) }));
  }
  if (fruit_g) {
    const ratio = leaf.over(fruit_g);
    figures.push(figure("leaf-to-fruit", "leaf-on-weight", ratio));
    const beside = { fruit: ["small-weight", fruit_g], ratio: ["leaf-on-weight", ratio] };
    steps.push(sentence("leaf-to-fruit", { ...facts, .../** @type {any} */ (beside) }));
  }
  return answer("leaf-fruit", figures, steps);
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function shootThinning(given) {
  const { buds, shoots_per_bud, large_wounds, shoots_per_wound } = given;
  const { canopy_mm, target_shoots_per_mm } = given;
  const expected = buds.times(shoots_per_bud).plus(large_wounds.times(shoots_per_wound));
  const target = target_shoots_per_mm.times(canopy_mm);
  const off = expected.minus(target).atLeast(ZERO);
  /** @type {Sentence["facts"]} */
  const facts = {
    buds: ["buds", buds],
    each: ["number", shoots_per_bud],
    wounds: ["wounds", large_wounds],
    woken: ["number", shoots_per_wound],
    expected: ["shoots-per-vine", expected],
    density: ["on-length", target_shoots_per_mm],
    canopy: ["canopy", canopy_mm],
    target: ["shoots-per-vine", target],
    off: ["shoots-per-vine", off],
  };
  const figures = [
    figure("take-off", "shoots", off),
    figure("expected-shoots", "shoots", expected),
    figure("target-shoots", "shoots", target),
  ];
  const steps = ["expected", "target", "take-off"].map((name) => sentence(name, facts));
  const remarks = off.high.sign === 0 ? [sentence("nothing-to-take-off")] : [];
  return answer("thinning", figures, steps, remarks);
}
