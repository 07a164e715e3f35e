/**
 * Practice without end: vines are drawn from the handbook's store by what the learner needs.
 *
 * What the page gives, inside `<div data-pencilwood-practice>`:
 * - `<script type="application/json" class="pw-practice-data">`: `PracticeData`;
 * - elements with class `pw-fallback`, hidden once this runs.
 * Each vine is a script of its own that calls `pencilwoodPractice`: a page that was opened from
 * a folder may load scripts, but may not read files.
 * It keeps `pencilwood:rules` (weak rules) and `pencilwood:practice:...` (the vine in hand).
 */

import { goalWords } from "../bud_goal.mjs";
import { button, element, setText } from "../dom.mjs";
import { readJson } from "../script_json.mjs";
import { Keeper } from "../storage.mjs";
import { dayNumber } from "./days.mjs";
import { linkList } from "./feedback.mjs";
import { readMemory, writeMemory } from "./memory_shelf.mjs";
import { brokenRules, QuizExercise } from "./quiz_exercise.mjs";
import { QuizWords } from "./quiz_words.mjs";
import { dueRules, nextVine, ofLevel, passedOver, remember } from "./review.mjs";
import { ScopedKeeper } from "./scoped_keeper.mjs";

/** @import {PageWords, Result, RuleWords, Sheet} from "../types.mjs" */

/**
 * @typedef {{name: string, level: string, teaches: string[]}} ListedVine
 *
 * @typedef {object} PracticeData
 * @property {number} format
 * @property {string} version
 * @property {string} language
 * @property {"metric" | "us"} units
 * @property {string} folder  of the vines' scripts, seen from the page
 * @property {ListedVine[]} vines
 * @property {Record<string, RuleWords>} rules
 * @property {Record<string, string>} strings
 *
 * @typedef {{sheet: Sheet, page: PageWords, svg: SVGSVGElement}} Unpacked
 * @typedef {(packed: any, data: PracticeData) => Unpacked} Unpack
 *
 * @typedef {object} InHand  kept under `practice:now`
 * @property {string} version
 * @property {string} name
 * @property {string} level
 * @property {boolean} remembered  whether this vine has told already what the learner knows
 * @property {number} day
 */

/** The handbook's vines call this function; the page that waits for one listens to it. */
const CALLED = "pencilwoodPractice";

export class PracticePage {
  /**
   * @param {HTMLElement} root
   * @param {Unpack} unpack
   * @param {Keeper} [keeper]
   */
  constructor(root, unpack, keeper = new Keeper()) {
    this.root = root;
    this.unpack = unpack;
    this.keeper = keeper;
    this.corner = new ScopedKeeper(keeper, "practice");
    /** @type {PracticeData} */
    this.data = readJson(root, "pw-practice-data");
    this.words = new QuizWords(this.data);
    this.level = "all";
    this.asked = "";
    this.remembered = false;
  }

  bind() {
    const { words } = this;
    const chooser = this.makeChooser();
    this.unsaved = element("p", { class: "pw-ask-need" }, words.say("not-saved"));
    this.due = element("div", { class: "pw-ask-due" });
    this.heading = element("h2", { tabindex: -1 }, words.say("practice.heading"));
    this.said = element("p", { class: "pw-ask-said", role: "status" });
    this.place = element("div");
    const next = button(words.say("practice.next"), () => this.next(), { class: "pw-main" });
    this.built = element(
      "div",
      { class: "pw-quiz-built pw-ask" },
      element("div", { class: "pw-practice-head" }, this.heading, chooser),
      this.said,
      this.place,
      this.unsaved,
      element("div", { class: "pw-buttons" }, next),
      this.due,
      element("p", { class: "pw-ask-hint" }, words.say("practice.how")),
      element("p", { class: "pw-ask-plain" }, words.say("practice.plain")),
    );
    this.root.append(this.built);
    this.root.classList.add("pw-quiz", "pw-live");
    this.takeUp();
    this.showDue();
  }

  /** How hard the vines are, beside the name of the one in hand. */
  makeChooser() {
    const { words } = this;
    const levels = ["all", ...new Set(this.data.vines.map(({ level }) => level))];
    const choices = levels.map((value) =>
      element("option", { value }, words.say(`practice.level.${value}`)),
    );
    // Its name stands beside it only where there is room.
    this.levels = element("select", { "aria-label": words.say("practice.level") }, ...choices);
    this.levels.addEventListener("change", () => this.chooseLevel(this.levels?.value ?? "all"));
    const asks = element("span", { class: "pw-practice-level-name" }, words.say("practice.level"));
    return element("label", { class: "pw-practice-level" }, asks, this.levels);
  }

  /**
   * A vine that nobody has cut yet gives way to one of the level; work that was begun stays.
   *
   * @param {string} level
   */
  chooseLevel(level) {
    this.level = level;
    this.keepInHand();
    const inHand = this.data.vines.find(({ name }) => name === this.asked);
    if (level === "all" || inHand?.level === level) return this.tell("");
    if (this.exercise?.isUntouched === false) return this.tell(this.words.say("practice.level.later"));
    this.next(false);
  }

  takeUp() {
    const kept = /** @type {Partial<InHand> | null} */ (this.corner.read("now"));
    const known = this.data.vines.find(({ name }) => name === kept?.name);
    const levels = this.data.vines.map(({ level }) => level);
    if (kept?.level !== undefined && levels.includes(kept.level)) this.level = kept.level;
    if (this.levels) this.levels.value = this.level;
    if (known === undefined || kept?.version !== this.data.version) return this.next(false);
    this.remembered = kept.remembered === true;
    // Yesterday's result has been read; what comes back today waits.
    if (this.remembered && kept.day !== thisDay()) return this.next(false);
    this.load(known, false);
  }

  showDue() {
    const { words, data } = this;
    const memory = readMemory(this.keeper);
    const due = dueRules(memory, thisDay());
    const links = due.flatMap((rule) => (data.rules[rule] === undefined ? [] : [data.rules[rule]]));
    const later = Object.keys(memory.weak).length - due.length;
    const today =
      links.length === 0
        ? element("p", {}, words.say("practice.none"))
        : linkList(words.count("practice.again", links.length), links);
    this.due?.replaceChildren(today);
    if (later > 0) this.due?.append(element("p", {}, words.count("practice.later", later)));
    if (this.unsaved) this.unsaved.hidden = this.keeper.isKept;
  }

  /** @param {boolean} [goThere] */
  next(goThere = true) {
    const memory = readMemory(this.keeper);
    const vines = this.data.vines.map(({ name, level, teaches }) => ({ slug: name, level, rules: teaches }));
    const { slug } = nextVine(
      passedOver(memory, this.asked),
      ofLevel(vines, this.level, memory, this.asked),
      thisDay(),
    );
    const vine = this.data.vines.find(({ name }) => name === slug);
    if (vine === undefined) return;
    this.corner.write("work", null);
    this.remembered = false;
    this.load(vine, goThere);
  }

  keepInHand() {
    const { asked: name, level, remembered } = this;
    const { version } = this.data;
    this.corner.write("now", { version, name, level, remembered, day: thisDay() });
  }

  /**
   * @param {ListedVine} vine
   * @param {boolean} goThere
   */
  load(vine, goThere) {
    this.asked = vine.name;
    this.keepInHand();
    this.exercise?.destroy();
    this.exercise = undefined;
    this.place?.replaceChildren();
    this.tell(this.words.say("practice.loading"));
    this.script?.remove();
    this.script = element("script", { src: `${this.data.folder}${vine.name}.js` });
    Object.assign(globalThis, {
      [CALLED]: (/** @type {{name: string}} */ packed) => {
        // A slow script of the vine before must not take the place of the one asked for since.
        if (packed.name === this.asked) this.show(vine, packed, goThere);
      },
    });
    this.script.addEventListener("error", () => {
      if (vine.name === this.asked) this.tell(this.words.say("practice.failed"));
    });
    document.head.append(this.script);
  }

  /**
   * @param {ListedVine} vine
   * @param {unknown} packed
   * @param {boolean} goThere
   */
  show(vine, packed, goThere) {
    const { sheet, page, svg } = this.unpack(packed, this.data);
    const root = element("div", { class: "pw-exercise" }, svg);
    root.append(inScript("pw-sheet", sheet), inScript("pw-words", page));
    this.place?.replaceChildren(root);
    this.exercise = new QuizExercise(root, new OneVineKeeper(this.corner), false, {
      scored: (result) => this.scored(vine, result),
      reopened: () => {},
    });
    this.exercise.onward = button(this.words.say("practice.next"), () => this.next(), { class: "pw-main" });
    this.exercise.bind();
    const goal = goalWords(sheet, this.exercise.words, "hint");
    if (goal !== "") root.before(element("p", { class: "pw-on-paper" }, goal));
    if (this.heading) {
      const level = this.words.say(`practice.level.${vine.level}`);
      const n = Number(vine.name.split("-").at(-1));
      setText(this.heading, this.words.say("practice.vine", { n, level }));
    }
    this.tell("");
    if (goThere) this.heading?.focus();
  }

  /**
   * @param {ListedVine} vine
   * @param {Result} result
   */
  scored(vine, result) {
    const { exercise } = this;
    // Only the first try at a vine tells what somebody knows.
    if (exercise === undefined || this.remembered) return;
    this.remembered = true;
    this.keepInHand();
    const broken = brokenRules(exercise.sheet, exercise.page, result);
    const practised = { slug: vine.name, level: vine.level, rules: vine.teaches };
    const memory = readMemory(this.keeper);
    writeMemory(this.keeper, remember(memory, practised, broken, thisDay()));
    this.showDue();
  }

  /** @param {string} text */
  tell(text) {
    if (this.said) setText(this.said, text);
  }
}

function thisDay() {
  return dayNumber(new Date());
}

/** Keeps the work at one vine only, under one name, so that practice never fills the device. */
class OneVineKeeper extends ScopedKeeper {
  /** @param {ScopedKeeper} corner */
  constructor(corner) {
    super(corner, corner.scope);
  }

  /**
   * @override
   * @param {string} key
   */
  read(key) {
    return super.read(key.split(":")[0]);
  }

  /**
   * @override
   * @param {string} key
   * @param {unknown} value
   */
  write(key, value) {
    return super.write(key.split(":")[0], value);
  }
}

/**
 * @param {string} name
 * @param {unknown} body
 */
function inScript(name, body) {
  return element("script", { type: "application/json", class: name }, JSON.stringify(body));
}
