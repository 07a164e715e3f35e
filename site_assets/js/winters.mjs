/**
 * One vine over three winters. At each position the learner chooses which cane stays; the next
 * winter is put together, position by position, of what was worked out when the page was made.
 * Nothing is reckoned here: every number and sentence is looked up.
 */

import { button, element, radios } from "./dom.mjs";
import { readJson } from "./script_json.mjs";
import { WinterStage } from "./winter_stage.mjs";
import { mixedDrawing, showChoices } from "./winters_drawing.mjs";

/** @typedef {"n" | "f"} Stays  the near cane or the far one */
/**
 * @typedef {object} WinterData
 * @property {number[]} scores  by combination of stories, this winter's choice included
 * @property {number[]} best  by combination of earlier stories
 * @property {number[]} rest  by combination, this winter's choice included: index in `rests`
 * @property {string[][]} rests
 * @property {[string, string][][]} canes  position -> story so far -> the near cane, the far one
 * @property {[number, string, string[]][][]} at  position -> story -> mm, in words, losses
 */
/**
 * @typedef {object} WintersData
 * @property {string[]} positions
 * @property {number} passMark
 * @property {number} limit  mm from the arm
 * @property {WinterData[]} winters
 * @property {Record<string, string>} strings
 */
/** @typedef {{winter: number, score: number, climb: string, within: number}} Done */

/**
 * A story's number among all of its length: the near cane first, the latest choice fastest.
 *
 * @param {string} story
 */
export function numberOf(story) {
  return [...story].reduce((number, stays) => 2 * number + (stays === "f" ? 1 : 0), 0);
}

/**
 * The number of a combination of stories of one length; the last position's changes fastest.
 *
 * @param {readonly string[]} stories
 */
export function combinationOf(stories) {
  const each = 2 ** (stories[0]?.length ?? 0);
  return stories.reduce((number, story) => each * number + numberOf(story), 0);
}

/**
 * What a winter comes to.
 *
 * @param {WintersData} data
 * @param {readonly string[]} stories  by position, this winter's choice included
 */
export function lookUp(data, stories) {
  const winter = data.winters[stories[0].length - 1];
  const number = combinationOf(stories);
  const at = stories.map((story, position) => winter.at[position][numberOf(story)]);
  const farthest = at.reduce((far, one) => (one[0] > far[0] ? one : far));
  return {
    score: winter.scores[number],
    best: winter.best[combinationOf(stories.map((story) => story.slice(0, -1)))],
    climb: farthest[1],
    within: at.filter(([mm]) => mm <= data.limit).length,
    losses: [...at.flatMap((one) => one[2]), ...winter.rests[winter.rest[number]]],
  };
}

export class Winters {
  /** @param {HTMLElement} root  `[data-pencilwood-winters]` */
  constructor(root) {
    this.root = root;
    /** @type {WintersData} */
    this.data = readJson(root, "pw-winters-data");
    this.stage = new WinterStage(root, this.data.strings, () => {
      this.start();
      this.show();
    });
    /** @type {string[]} */
    this.stories = [];
    /** @type {(Stays | null)[]} */
    this.choices = [];
    /** @type {Done[]} */
    this.done = [];
    this.start();
  }

  bind() {
    this.stage.begin();
    this.show();
  }

  start() {
    this.stories = this.data.positions.map(() => "");
    this.choices = this.data.positions.map(() => null);
    this.done = [];
  }

  get winter() {
    return this.stories[0].length;
  }

  /** The winter at hand, before it is pruned, or the end. */
  show() {
    const count = this.data.winters.length;
    if (this.winter === count) {
      this.put(this.stage.say("end", { count }), this.drawing(), element("p", {}, this.stage.say("end-say")));
      return;
    }
    const heading = this.stage.say("winter", { n: this.winter + 1, count });
    this.missing = this.stage.missing();
    const back = this.winter > 0 ? [button(this.stage.say("back"), () => this.back())] : [];
    this.put(
      heading,
      this.drawing(),
      element("p", {}, this.stage.say("before")),
      this.stage.row(
        button(this.stage.say("near-all"), () => this.chooseAll("n")),
        button(this.stage.say("far-all"), () => this.chooseAll("f")),
      ),
      ...this.data.positions.map((name, position) => this.question(name, position)),
      this.missing,
      this.stage.row(button(this.stage.say("leave"), () => this.leave(), { class: "pw-main" }), ...back),
    );
  }

  drawing() {
    const label = this.stage.say("drawing", { n: this.winter + 1 });
    this.svg = mixedDrawing(document, this.data.positions, this.stories, label);
    showChoices(this.svg, this.data.positions, this.choices);
    return this.svg;
  }

  /**
   * @param {string} name
   * @param {number} position
   */
  question(name, position) {
    const texts = this.data.winters[this.winter].canes[position][numberOf(this.stories[position])];
    const choices = [
      { value: "n", text: texts[0] },
      { value: "f", text: texts[1] },
    ];
    return radios(this.stage.say("choose", { name }), `pw-winters-${name}`, choices, (value) => {
      this.choices[position] = value === "f" ? "f" : "n";
      this.paint();
    });
  }

  /** @param {Stays} stays */
  chooseAll(stays) {
    this.choices = this.choices.map(() => stays);
    for (const input of this.root.querySelectorAll("input")) {
      input.checked = input.value === stays;
    }
    this.paint();
  }

  paint() {
    if (this.svg) showChoices(this.svg, this.data.positions, this.choices);
    if (this.missing) this.missing.textContent = "";
  }

  /** Prunes as chosen, and tells what came of it. */
  leave() {
    const open = this.data.positions.filter((_, position) => this.choices[position] === null);
    if (open.length > 0) {
      if (this.missing) this.missing.textContent = this.stage.say("missing", { names: open.join(", ") });
      return;
    }
    const pruned = this.svg;
    this.stories = this.stories.map((story, position) => story + this.choices[position]);
    this.choices = this.choices.map(() => null);
    const found = lookUp(this.data, this.stories);
    const { score, climb, within } = found;
    this.done.push({ winter: this.winter, score, climb, within });
    this.put(this.stage.say("score", { score }), ...(pruned ? [pruned] : []), ...this.told(found));
  }

  /** @param {ReturnType<typeof lookUp>} found */
  told(found) {
    const mark = this.data.passMark;
    const spurs = this.data.positions.length;
    const losses = found.losses.length > 0 ? found.losses : [this.stage.say("none")];
    const last = this.winter === this.data.winters.length;
    const next = last
      ? this.stage.say("end", { count: this.winter })
      : this.stage.say("next", { n: this.winter + 1 });
    const best = found.best === 1 ? "best.one" : "best";
    return [
      element(
        "p",
        {},
        [
          found.score >= mark ? this.stage.say("passed") : this.stage.say("failed", { mark }),
          this.stage.say("climb", { climb: found.climb }),
          this.stage.say("within", { within: found.within, spurs }),
          ...(found.best > 0 ? [this.stage.say(best, { lost: found.best })] : []),
        ].join(" "),
      ),
      element("p", {}, this.stage.say("losses")),
      element("ul", {}, ...losses.map((loss) => element("li", {}, loss))),
      this.stage.row(
        button(next, () => this.show(), { class: "pw-main" }),
        button(this.stage.say("back"), () => this.back()),
      ),
    ];
  }

  /** Takes the latest winter back. */
  back() {
    this.stories = this.stories.map((story) => story.slice(0, -1));
    this.choices = this.choices.map(() => null);
    this.done.pop();
    this.show();
  }

  /**
   * @param {string} heading
   * @param {...Element} things
   */
  put(heading, ...things) {
    const head = ["th-winter", "th-score", "th-climb", "th-within"];
    const rows = this.done.map(({ winter, score, climb, within }) => [
      winter,
      score,
      climb,
      `${within}\u00a0/\u00a0${this.data.positions.length}`,
    ]);
    this.stage.put(heading, things, rows.length > 0 ? this.stage.table(head, rows) : null);
  }
}
