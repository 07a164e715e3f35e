/**
 * How the learner cuts: with which tool, and how far above the bud. Nothing is preset: each is
 * asked at the first cut that needs it, and the cut is made once it is answered. A strip shows
 * both from then on, and changes them.
 */

import { button, element, setText } from "./dom.mjs";

/** @import {Headings} from "./headings.mjs" */
/** @import {StubName, ToolName} from "./types.mjs" */

/** @typedef {{tool: ToolName | null, stub: StubName | null}} How */
/** @typedef {"tool" | "stub"} Asked */
/**
 * @typedef {object} WaitingCut
 * @property {boolean} shortens  whether it is a cut above a bud
 * @property {string} what  the cut in words
 * @property {{piece: number, buds: number | null}} [at]  the ring, where there is one
 * @property {() => void} cut
 *
 * @typedef {object} HowActions
 * @property {(how: Partial<How>) => void} choose
 * @property {(open: boolean) => void} opened
 * @property {(waiting: WaitingCut | null) => void} holds  tells which cut waits for an answer
 */

/** @type {readonly ToolName[]} */
export const TOOLS = ["shears", "loppers", "saw"];
/** @type {readonly StubName[]} */
export const STUBS = ["close", "right", "long"];

const ANSWERS = { tool: TOOLS, stub: STUBS };
/** @type {readonly Asked[]} */
const ALL = ["tool", "stub"];

export class HowPanel {
  /**
   * @param {import("./words.mjs").Words} words
   * @param {Headings} headings
   * @param {HowActions} actions
   */
  constructor(words, headings, actions) {
    this.words = words;
    this.actions = actions;
    /** @type {How} */
    this.how = { tool: null, stub: null };
    /** @type {(() => void) | null} */
    this.then = null;
    this.openers = ALL.map((asked) => this.makeOpener(asked));
    this.root = element("div", { class: "pw-how" }, ...this.openers.map(({ opener }) => opener));
    this.heading = element(headings.sub, { class: "pw-how-asked", tabindex: -1 });
    this.choices = element("div", { class: "pw-buttons" });
    const leave = button(words.say("how.leave"), () => this.close());
    /** The question itself; it takes the place of a piece's own buttons while it is open. */
    this.question = element(
      "div",
      { class: "pw-how-question", hidden: true },
      ...[this.heading, this.choices, leave],
    );
    this.question.addEventListener("keydown", (event) => {
      if (event.key === "Escape") this.close();
    });
  }

  /** @param {Asked} asked */
  makeOpener(asked) {
    const name = element("span", { class: "pw-how-name" }, this.words.say(`${asked}.name`));
    const value = element("span", { class: "pw-how-value" });
    const press = () => this.ask(asked, null, opener);
    const opener = button("", press, { class: "pw-how-open" });
    opener.append(name, " ", value);
    opener.dataset.how = asked;
    return { asked, opener, value };
  }

  /**
   * @param {How} how
   * @param {boolean} tying  whether nothing is cut now
   */
  update(how, tying) {
    this.how = how;
    this.root.hidden = tying;
    for (const { asked, opener, value } of this.openers) {
      const chosen = how[asked];
      const key = asked === "stub" ? `stub.short.${chosen}` : `tool.${chosen}`;
      setText(value, this.words.say(chosen === null ? "how.open" : key));
      opener.classList.toggle("pw-how-none", chosen === null);
    }
  }

  /**
   * Asks what a cut still needs, one question after the other, and then lets it be made.
   *
   * @param {WaitingCut} waiting
   */
  before(waiting) {
    const { shortens, cut } = waiting;
    const open = ALL.find((asked) => this.how[asked] === null && (shortens || asked === "tool"));
    if (open === undefined) return cut();
    this.ask(open, () => this.before(waiting), null, waiting.what);
    this.actions.holds(waiting);
  }

  /**
   * @param {Asked} asked
   * @param {(() => void) | null} then  what waits for the answer
   * @param {HTMLElement | null} from  where the keyboard goes back to
   * @param {string} [what]  the cut that waits, in words
   */
  ask(asked, then, from, what = "") {
    this.then = then;
    this.from = from ?? /** @type {HTMLElement | null} */ (document.activeElement);
    setText(this.heading, `${what} ${this.words.say(asked)}`.trim());
    this.choices.replaceChildren(...ANSWERS[asked].map((value) => this.choice(asked, value)));
    this.question.hidden = false;
    this.mark(asked);
    this.actions.opened(true);
    this.show();
  }

  /** Whether a cut waits until the question is answered or left. */
  get holdsCut() {
    return this.then !== null;
  }

  /** Brings the whole question into sight, with the keyboard in it. */
  show() {
    this.heading.focus({ preventScroll: true });
    this.question.scrollIntoView({ block: "nearest" });
  }

  /**
   * @param {Asked} asked
   * @param {string} value
   */
  choice(asked, value) {
    const made = button(this.words.say(`${asked}.${value}`), () => {
      const { then } = this;
      this.close();
      this.actions.choose({ [asked]: value });
      then?.();
    });
    made.dataset.value = value;
    made.setAttribute("aria-pressed", `${this.how[asked] === value}`);
    return made;
  }

  close() {
    if (this.question.hidden) return;
    this.then = null;
    const hadFocus = this.question.contains(document.activeElement);
    this.question.hidden = true;
    this.mark(null);
    this.actions.holds(null);
    this.actions.opened(false);
    if (hadFocus) this.from?.focus();
  }

  /** @param {Asked | null} open */
  mark(open) {
    for (const { asked, opener } of this.openers) {
      opener.setAttribute("aria-expanded", `${asked === open}`);
    }
  }
}
