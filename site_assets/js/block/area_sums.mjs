/** Vines on an area, and the crop to expect from them. */

import { answer, figure, sentence } from "./answer.mjs";
import { ONE } from "./fraction.mjs";
import { BlockError, Range } from "./range.mjs";

/** @import {Answer, Given, Sentence} from "./types.mjs" */

const MM2_PER_M2 = 1_000_000;

/**
 * Vines on a square metre, without those that are missing.
 *
 * @param {Range} row
 * @param {Range} vine
 * @param {Range} missing
 */
export function livingVines(row, vine, missing) {
  if (!missing.high.below(ONE)) throw new BlockError("no-vines", "missing_share");
  return Range.of(MM2_PER_M2).over(row.times(vine)).times(Range.of(1).minus(missing));
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function vinesPerArea({ row_mm, vine_mm, missing_share, area_m2 }) {
  const vines = livingVines(row_mm, vine_mm, missing_share);
  const planted = livingVines(row_mm, vine_mm, Range.of(0));
  const figures = [
    figure("vines-per-hectare", "vines-per-hectare", vines),
    figure("vines-per-acre", "vines-per-acre", vines),
  ];
  const steps = [
    sentence("planted", {
      row: ["spacing", row_mm],
      vine: ["spacing", vine_mm],
      per_ha: ["vines-per-hectare", planted],
      per_acre: ["vines-per-acre", planted],
    }),
  ];
  if (missing_share.high.sign > 0) {
    steps.push(
      sentence("missing", {
        share: ["share", missing_share],
        per_ha: ["vines-per-hectare", vines],
        per_acre: ["vines-per-acre", vines],
      }),
    );
  }
  if (area_m2) {
    const count = vines.times(area_m2);
    figures.push(figure("vines", "vines", count));
    steps.push(sentence("block-vines", { area: ["area", area_m2], vines: ["vines", count] }));
  }
  return answer("vines", figures, steps);
}

/**
 * @param {Given} given
 * @returns {Answer}
 */
export function cropEstimate(given) {
  const { buds, shoots_per_bud, clusters_per_shoot, cluster_g, area_m2 } = given;
  const clusters = buds.times(shoots_per_bud).times(clusters_per_shoot);
  const vineCrop = clusters.times(cluster_g);
  const vines = livingVines(given.row_mm, given.vine_mm, given.missing_share);
  const onArea = vineCrop.times(vines);
  /** @type {Sentence["facts"]} */
  const facts = {
    buds: ["buds", buds],
    shoots: ["number", shoots_per_bud],
    each: ["number", clusters_per_shoot],
    clusters: ["clusters-per-vine", clusters],
    cluster: ["cluster-weight", cluster_g],
    vine: ["vine-weight", vineCrop],
    per_ha: ["vines-per-hectare", vines],
    per_acre: ["vines-per-acre", vines],
    crop: ["crop-on-area", onArea],
  };
  const figures = [
    figure("crop-on-area", "crop-on-area", onArea),
    figure("vine-crop", "vine-weight", vineCrop),
    figure("clusters", "clusters-per-vine", clusters),
  ];
  const steps = ["clusters", "vine-crop", "crop-on-area"].map((name) => sentence(name, facts));
  if (area_m2) {
    const whole = onArea.times(area_m2);
    figures.push(figure("block-crop", "block-weight", whole));
    steps.push(sentence("block-crop", { area: ["area", area_m2], whole: ["block-weight", whole] }));
  }
  return answer("crop", figures, steps, [sentence("crop-accuracy")]);
}
