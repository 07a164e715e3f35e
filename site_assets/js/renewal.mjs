/**
 * A worn-out arm made new over three winters. Each winter the learner chooses what happens to it;
 * what has grown by the next one was worked out when the page was made and is looked up.
 */

import { button, element, radios } from "./dom.mjs";
import { readJson } from "./script_json.mjs";
import { WinterStage, copyOf, markFallen } from "./winter_stage.mjs";

/**
 * @typedef {object} StoryData
 * @property {string[]} works  what can be done next
 * @property {string} [work]  what was done last
 * @property {string} [short]  the same in a word or two
 * @property {string} [told]
 * @property {boolean} [sawn]  whether that took the old arm off
 * @property {string} [row]
 * @property {number} [buds]
 * @property {string} [bare]
 * @property {string[]} [losses]
 * @property {string} [end]
 */
/**
 * @typedef {object} RenewalData
 * @property {number} winters
 * @property {Record<string, StoryData>} stories  by their works, joined with "-"
 * @property {Record<string, string>} strings
 */

/**
 * Shows one choice in a drawing: what comes off is dotted, a laid cane lies along the wire.
 *
 * @param {SVGSVGElement} svg
 * @param {string} work  empty where nothing is chosen yet
 * @param {boolean} sawn  whether the old arm comes off
 */
function showWork(svg, work, sawn) {
  for (const wood of svg.querySelectorAll("[data-part], .pw-stretch")) {
    wood.classList.toggle("pw-gone", work !== "" && wood.classList.contains(`pw-off-${work}`));
  }
  for (const group of svg.querySelectorAll("[data-part]")) {
    const lies = work !== "" && group.classList.contains(`pw-untied-${work}`);
    group.classList.toggle("pw-tied-away", lies);
  }
  markFallen(svg);
  for (const laid of svg.querySelectorAll(".pw-laid")) {
    show(laid, work !== "" && laid.classList.contains(`pw-laid-${work}`));
  }
  for (const arm of svg.querySelectorAll(".pw-sawn")) show(arm, sawn);
}

/**
 * @param {Element} group
 * @param {boolean} shown
 */
function show(group, shown) {
  if (shown) group.removeAttribute("display");
  else group.setAttribute("display", "none");
}

export class Renewal {
  /** @param {HTMLElement} root  `[data-pencilwood-renewal]` */
  constructor(root) {
    this.root = root;
    /** @type {RenewalData} */
    this.data = readJson(root, "pw-renewal-data");
    this.stage = new WinterStage(root, this.data.strings, () => this.start());
    /** @type {string[]} */
    this.story = [];
    this.choice = "";
  }

  bind() {
    this.stage.begin();
    this.start();
  }

  start() {
    this.story = [];
    this.showWinter();
  }

  /**
   * @param {...string} more  what is done next
   * @returns {StoryData}
   */
  told(...more) {
    return this.data.stories[[...this.story, ...more].join("-")];
  }

  /** The drawing of the story so far. */
  drawing() {
    const found = this.root.querySelector(`svg[data-story="${this.story.join("-")}"]`);
    if (found === null) throw new Error("no drawing of this story");
    const label = found.querySelector("title")?.textContent ?? "";
    return copyOf(/** @type {SVGSVGElement} */ (found), label);
  }

  /** The winter at hand, before anything is done. */
  showWinter() {
    this.choice = "";
    const svg = this.drawing();
    const missing = this.stage.missing();
    const choices = this.told().works.map((work) => ({
      value: work,
      text: this.told(work).work ?? "",
    }));
    const asked = radios(this.stage.say("choose"), "pw-renewal-work", choices, (work) => {
      this.choice = work;
      missing.textContent = "";
      showWork(svg, work, this.told(work).sawn ?? false);
    });
    const act = button(
      this.stage.say("do"),
      () => {
        if (this.choice === "") missing.textContent = this.stage.say("missing");
        else this.prune(svg);
      },
      { class: "pw-main" },
    );
    const heading = this.stage.say("winter", { n: this.story.length + 1, count: this.data.winters });
    this.put(heading, svg, asked, missing, this.stage.row(act, ...this.backButton()));
  }

  /**
   * What the choice came to.
   *
   * @param {SVGSVGElement} svg
   */
  prune(svg) {
    this.story.push(this.choice);
    const { work, told, row, losses = [] } = this.told();
    const rules =
      losses.length > 0
        ? [
            element("p", {}, this.stage.say("losses")),
            element("ul", {}, ...losses.map((loss) => element("li", {}, loss))),
          ]
        : [];
    const isLast = this.story.length === this.data.winters;
    const next = button(
      isLast ? this.stage.say("end", { count: this.data.winters }) : this.stage.say("next"),
      () => {
        if (isLast) this.showEnd(svg);
        else this.showWinter();
      },
      { class: "pw-main" },
    );
    this.put(
      this.stage.say("done", { n: this.story.length }),
      svg,
      element("p", {}, `${work} ${told}`),
      element("p", {}, row ?? ""),
      ...rules,
      this.stage.row(next, ...this.backButton()),
    );
  }

  /**
   * What came of it all, with the vine as it was left.
   *
   * @param {SVGSVGElement} svg
   */
  showEnd(svg) {
    this.put(
      this.stage.say("end", { count: this.data.winters }),
      svg,
      element("p", { class: "pw-renewal-end" }, this.told().end ?? ""),
      this.stage.row(...this.backButton()),
    );
  }

  backButton() {
    if (this.story.length === 0) return [];
    return [
      button(this.stage.say("back"), () => {
        this.story.pop();
        this.showWinter();
      }),
    ];
  }

  /**
   * @param {string} heading
   * @param {...Element} things
   */
  put(heading, ...things) {
    const rows = this.story.map((_, number) => {
      const { short, buds, bare } = this.data.stories[this.story.slice(0, number + 1).join("-")];
      return [number + 1, short, buds, bare];
    });
    const head = ["th-winter", "th-work", "th-buds", "th-bare"];
    this.stage.put(heading, things, rows.length > 0 ? this.stage.table(head, rows) : null);
  }
}
