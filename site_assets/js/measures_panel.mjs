/** The live measures of the wood that is left; a learner who wants to judge alone closes them. */

import { element, setText } from "./dom.mjs";
import { measure } from "./measures.mjs";

/** @import {Measures} from "./measures.mjs" */
/** @import {Words} from "./words.mjs" */

/** @typedef {{name: string, value: (found: Measures) => string}} Row */

export class MeasuresPanel {
  /**
   * @param {import("./types.mjs").Sheet} sheet
   * @param {Words} words
   * @param {(open: boolean) => void} toggled
   */
  constructor(sheet, words, toggled) {
    this.rows = [...measuresOfAll(sheet, words), ...(countsOf(sheet, words) ?? measuresOfSpurs(words))];
    this.values = this.rows.map(() => element("dd"));
    const rows = this.rows.map(({ name }, number) =>
      element("div", {}, element("dt", {}, name), this.values[number]),
    );
    this.root = element(
      "details",
      { class: "pw-measures" },
      element("summary", {}, words.say("measures")),
      element("dl", {}, ...rows),
    );
    this.root.addEventListener("toggle", () => toggled(this.root.open));
  }

  /**
   * @param {import("./types.mjs").Sheet} sheet
   * @param {readonly number[]} states
   * @param {boolean} open
   */
  update(sheet, states, open) {
    if (this.root.open !== open) this.root.open = open;
    const found = measure(sheet, states);
    this.rows.forEach(({ value }, number) => setText(this.values[number], value(found)));
  }
}

/**
 * @param {import("./types.mjs").Sheet} sheet
 * @param {Words} words
 * @returns {Row[]}
 */
function measuresOfAll(sheet, words) {
  const isUs = words.units === "us";
  /** @type {Row} */
  const buds = { name: words.say("measure.buds"), value: ({ budsKept }) => `${budsKept}` };
  // Buds are counted by the length of the arms, and not where there are none.
  if (sheet.around !== undefined) return [buds];
  return [
    buds,
    {
      name: words.say(`measure.density.${words.units}`),
      value: (found) => words.tenths(isUs ? found.budsPerFootTenths : found.budsPerMetreTenths),
    },
  ];
}

/**
 * @param {Words} words
 * @returns {Row[]}
 */
function measuresOfSpurs(words) {
  const none = words.say("measure.none");
  return [
    { name: words.say("measure.spurs"), value: ({ spurs }) => `${spurs}` },
    {
      name: words.say("measure.spacing"),
      value: ({ smallestSpacing: mm }) => (mm === null ? none : words.length(mm)),
    },
    { name: words.say("measure.blank"), value: ({ longestBlank }) => words.length(longestBlank) },
  ];
}

/**
 * What the form counts, as far as there are words for it; it stands instead of how spurs lie.
 *
 * @param {import("./types.mjs").Sheet} sheet
 * @param {Words} words
 * @returns {Row[] | null}  null where there is none
 */
function countsOf(sheet, words) {
  const rows = (sheet.tallies ?? []).flatMap(({ name }) => {
    const key = `measure.tally.${name.replaceAll(" ", "-")}`;
    return words.knows(key)
      ? [{ name: words.say(key), value: (/** @type {Measures} */ { tallies }) => `${tallies.get(name)}` }]
      : [];
  });
  return rows.length > 0 ? rows : null;
}
