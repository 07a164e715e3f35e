/**
 * The trainer's crew list: slips are pasted or typed in, checked, kept on this device and saved
 * as a table. Nothing is sent anywhere.
 *
 * What the page gives, inside `<div data-pencilwood-crew>`:
 * - `<script type="application/json" class="pw-crew-data">`: `CrewData`;
 * - elements with class `pw-fallback`, hidden once this runs.
 * It keeps `pencilwood:crew`. It uses headings h2 and h3.
 */

import { button, element, setText } from "../dom.mjs";
import { readJson } from "../script_json.mjs";
import { Keeper } from "../storage.mjs";
import { asCsv, gather, isListed, takeUpList } from "./crew.mjs";
import { SlipForm } from "./slip_form.mjs";
import { isoDate, shownDate } from "./days.mjs";
import { QuizWords } from "./quiz_words.mjs";
import { FIELDS } from "./slip.mjs";

/** @import {Slip} from "./slip.mjs" */

/**
 * @typedef {object} CrewData
 * @property {string} language
 * @property {string[]} languages  in which the quizzes can be taken
 * @property {{quiz: string, title: string, version: string, topics: Record<string, string[]>}[]} quizzes
 * @property {Record<string, string>} strings
 */

const KEY = "crew";
const SHOWN = /** @type {const} */ (["name", "language", "quiz", "score", "date"]);

export class CrewPage {
  /**
   * @param {HTMLElement} root
   * @param {Keeper} [keeper]
   */
  constructor(root, keeper = new Keeper()) {
    this.root = root;
    this.keeper = keeper;
    /** @type {CrewData} */
    this.data = readJson(root, "pw-crew-data");
    this.words = new QuizWords(this.data);
    /** @type {Slip[]} */
    this.list = [];
    /** @type {Slip[] | null} the list before something was taken off it */
    this.before = null;
    this.heard = this.heard.bind(this);
  }

  bind() {
    const { words } = this;
    this.list = takeUpList(this.keeper.read(KEY));
    this.unsaved = element("p", { class: "pw-ask-need" }, words.say("not-saved"));
    this.said = element("p", { class: "pw-ask-said", role: "status" });
    this.faults = element("ul");
    this.table = element("tbody");
    this.form = new SlipForm(this.data, words, (slip) => this.add([slip], 0));
    this.built = element("div", { class: "pw-quiz-built" }, this.unsaved, this.pasting(), this.form.root, this.listed());
    this.root.append(this.built);
    this.root.classList.add("pw-quiz", "pw-live");
    window.addEventListener("storage", this.heard);
    this.update();
  }

  /** @param {StorageEvent} event */
  heard(event) {
    if (event.key !== `pencilwood:${KEY}`) return;
    this.list = takeUpList(this.keeper.read(KEY));
    this.update();
  }

  pasting() {
    const { words } = this;
    const box = element("textarea", { rows: 5, spellcheck: "false" });
    const press = button(words.say("crew.add-pasted"), () => this.paste(box), { class: "pw-main" });
    return element(
      "section",
      { class: "pw-ask" },
      element("h2", {}, words.say("crew.paste")),
      element("label", { class: "pw-slip-label" }, words.say("crew.paste-hint"), box),
      element("div", { class: "pw-buttons" }, press),
      element("div", { class: "pw-crew-faults", role: "alert" }, /** @type {Node} */ (this.faults)),
    );
  }

  /** @param {HTMLTextAreaElement} box */
  paste(box) {
    const found = gather(box.value, this.list);
    const { words } = this;
    this.add(found.added, found.twice);
    const lines = found.faults.map(({ line, fault }) => words.say("crew.fault", { line, what: words.say(`fault.${fault}`) }));
    this.faults?.replaceChildren(...lines.map((text) => element("li", { class: "pw-ask-need" }, text)));
    // What could not be read stays in the box, to be mended.
    const all = box.value.split(/\r\n|[\n\r\u2028\u2029]/);
    box.value = found.faults.map(({ line }) => all[line - 1]).join("\n");
    if (found.faults.length > 0) box.focus();
  }

  /**
   * @param {Slip[]} slips
   * @param {number} twice
   */
  add(slips, twice) {
    // Another page may have added to the list since.
    if (this.keeper.isKept) this.list = takeUpList(this.keeper.read(KEY) ?? this.list);
    const fresh = slips.filter((slip) => !isListed(slip, this.list));
    const same = twice + slips.length - fresh.length;
    this.keep([...this.list, ...fresh]);
    const added = this.words.count("crew.added", fresh.length);
    this.tell(same === 0 ? added : `${added} ${this.words.count("crew.twice", same)}`);
  }

  listed() {
    const { words } = this;
    const headings = SHOWN.map((field) => element("th", { scope: "col" }, words.say(`slip.${field}`)));
    headings.push(element("th", { scope: "col" }, words.say("crew.take-off")));
    const table = element("table", { class: "pw-crew-rows" }, element("thead", {}, element("tr", {}, ...headings)), /** @type {Node} */ (this.table));
    const label = words.say("crew.list");
    this.none = element("p", { class: "pw-crew-none" }, words.say("crew.none"));
    this.rows = element("div", { class: "pw-crew-table", role: "region", tabindex: 0, "aria-label": label }, table);
    this.save = button(words.say("crew.save"), () => this.saveCsv(), { class: "pw-main" });
    this.undo = button(words.say("crew.undo"), () => this.bringBack());
    this.clear = button(words.say("crew.clear"), () => this.takeOff(null));
    return element(
      "section",
      { class: "pw-ask" },
      element("h2", {}, label),
      /** @type {Node} */ (this.said),
      this.none,
      this.rows,
      element("div", { class: "pw-buttons" }, this.save, this.undo, this.clear),
      element("p", { class: "pw-ask-plain" }, words.say("crew.plain"), " ", words.say("crew.no-proof")),
    );
  }

  /** @param {Slip[]} list */
  keep(list) {
    this.list = list;
    this.keeper.write(KEY, list);
    this.update();
  }

  update() {
    if (this.unsaved) this.unsaved.hidden = this.keeper.isKept;
    const { words, list } = this;
    const rows = list.map((slip, number) => {
      const [name, ...rest] = SHOWN.map((field) => this.shown(slip, field));
      const off = button(words.say("crew.take-off"), () => this.takeOff(number), { more: slip.name });
      const cells = rest.map((text) => element("td", {}, text));
      return element("tr", {}, element("th", { scope: "row" }, name), ...cells, element("td", {}, off));
    });
    this.table?.replaceChildren(...rows);
    if (this.undo) this.undo.hidden = this.before === null;
    if (this.none) this.none.hidden = list.length > 0;
    if (this.rows) this.rows.hidden = list.length === 0;
    for (const one of [this.save, this.clear]) if (one) one.disabled = list.length === 0;
  }

  /**
   * @param {Slip} slip
   * @param {typeof SHOWN[number]} field
   */
  shown(slip, field) {
    if (field === "quiz") return this.data.quizzes.find(({ quiz }) => quiz === slip.quiz)?.title ?? slip.quiz;
    if (field === "date") return shownDate(slip.date, this.data.language);
    const known = field === "language" && this.data.languages.includes(slip.language);
    return known ? this.words.say(`language.${slip.language}`) : slip[field];
  }

  /** @param {number | null} number  null takes all off */
  takeOff(number) {
    this.before = this.list;
    this.keep(number === null ? [] : this.list.filter((_, at) => at !== number));
    this.tell(this.words.count("crew.left", this.list.length));
    this.undo?.focus();
  }

  bringBack() {
    const list = this.before ?? this.list;
    this.before = null;
    this.keep(list);
    this.tell(this.words.count("crew.left", list.length));
    this.save?.focus();
  }

  saveCsv() {
    const headings = [...FIELDS.map((field) => this.words.say(`slip.${field}`)), this.words.say("slip.code")];
    const file = new Blob([asCsv(this.list, headings)], { type: "text/csv;charset=utf-8" });
    const url = URL.createObjectURL(file);
    const link = element("a", { href: url, download: `${this.words.say("crew.file")}-${isoDate(new Date())}.csv` });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
    this.tell(this.words.say("crew.saved"));
  }

  /** @param {string} text */
  tell(text) {
    if (this.said) setText(this.said, text);
  }
}
