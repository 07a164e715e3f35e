/** The live measures of the wood that is left; a learner who wants to judge alone closes them. */

import { element, setText } from "./dom.mjs";
import { measure } from "./measures.mjs";

const ROWS = /** @type {const} */ (["buds", "density", "spurs", "spacing", "blank"]);

export class MeasuresPanel {
  /**
   * @param {import("./words.mjs").Words} words
   * @param {(open: boolean) => void} toggled
   */
  constructor(words, toggled) {
    this.words = words;
    this.values = ROWS.map(() => element("dd"));
    this.rows = ROWS.map((row, number) => {
      const key = row === "density" ? `measure.density.${words.units}` : `measure.${row}`;
      return element("div", {}, element("dt", {}, words.say(key)), this.values[number]);
    });
    this.root = element(
      "details",
      { class: "pw-measures" },
      element("summary", {}, words.say("measures")),
      element("dl", {}, ...this.rows),
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
    const { words } = this;
    const density = words.units === "us" ? found.budsPerFootTenths : found.budsPerMetreTenths;
    const spacing = found.smallestSpacing;
    const texts = [
      `${found.budsKept}`,
      words.tenths(density),
      `${found.spurs}`,
      spacing === null ? words.say("measure.none") : words.length(spacing),
      words.length(found.longestBlank),
    ];
    texts.forEach((text, number) => setText(this.values[number], text));
    // Buds are counted by the length of the arms, and not where there are none.
    if (sheet.around !== undefined) this.rows[ROWS.indexOf("density")].remove();
  }
}
