/** The completion slip on the page and on paper. The name is typed each time and never kept. */

import { button, element, setText } from "../dom.mjs";
import { shownDate } from "./days.mjs";
import { topicsOf } from "./quiz_data.mjs";
import { codeOf, FIELDS, slipLine, tidyField, tidySlip } from "./slip.mjs";

/** @import {Progress} from "./progress.mjs" */
/** @import {QuizData} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */
/** @import {Slip} from "./slip.mjs" */

export class SlipView {
  /**
   * @param {QuizData} data
   * @param {QuizWords} words
   * @param {number} points
   * @param {Progress} progress
   */
  constructor(data, words, points, progress) {
    this.data = data;
    this.words = words;
    this.points = points;
    this.progress = progress;
    this.name = element("input", { type: "text", maxlength: 80, autocomplete: "off" });
    this.need = element("p", { class: "pw-ask-need", role: "alert" });
    this.place = element("div");
    const form = element(
      "form",
      { class: "pw-ask-form" },
      element("label", {}, words.say("slip.your-name"), " ", this.name),
      element("p", { class: "pw-ask-hint" }, words.say("slip.name-hint")),
      this.need,
      element("button", { type: "submit", class: "pw-button pw-main" }, words.say("slip.make")),
    );
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.make();
    });
    this.root = element("div", { class: "pw-slip-maker" }, element("h3", {}, words.say("slip")), form, this.place);
  }

  make() {
    const name = tidyField(this.name.value);
    setText(this.need, name === "" ? this.words.say("slip.need-name") : "");
    if (name === "") return this.name.focus();
    const slip = this.slipFor(name);
    const card = this.card(slip);
    this.sheet?.remove();
    // For paper, the slip stands alone at the top of the body; the style sheet hides the rest.
    this.sheet = element("div", { class: "pw-slip-sheet", "aria-hidden": "true" }, card.cloneNode(true));
    document.body.append(this.sheet);
    document.body.classList.add("pw-slip-there");
    const line = slipLine(slip);
    const box = element("textarea", { readonly: true, rows: 3, class: "pw-slip-line" }, line);
    const said = element("p", { class: "pw-ask-said", role: "status" });
    const print = button(this.words.say("slip.print"), () => window.print(), { class: "pw-main" });
    const copy = button(this.words.say("slip.copy"), () => this.copy(box, said));
    this.place.replaceChildren(
      card,
      element("label", { class: "pw-slip-label" }, this.words.say("slip.line"), box),
      element("div", { class: "pw-buttons" }, print, copy),
      said,
    );
    card.querySelector("h4")?.focus();
  }

  /**
   * @param {string} name
   * @returns {Slip}
   */
  slipFor(name) {
    const { data, points, progress } = this;
    return tidySlip({
      name,
      language: data.language,
      quiz: data.quiz,
      version: data.version,
      score: `${points}`,
      date: progress.date,
      topics: topicsOf(data).join("; "),
    });
  }

  /** @param {Slip} slip */
  card(slip) {
    const { words, data } = this;
    const shown = {
      ...slip,
      language: words.say(`language.${slip.language}`),
      quiz: `${data.title} (${slip.quiz})`,
      date: shownDate(slip.date, data.language),
    };
    const rows = FIELDS.map((field) => row(words.say(`slip.${field}`), shown[field]));
    rows.push(row(words.say("slip.code"), codeOf(slip)));
    const lines = ["seen", "trainer", "signed", "worker"].map((line) =>
      element("p", { class: "pw-slip-sign" }, words.say(`slip.sign.${line}`)),
    );
    return element(
      "div",
      { class: "pw-slip" },
      element("h4", { tabindex: -1 }, words.say("slip.title")),
      element("dl", {}, ...rows),
      element("h5", {}, words.say("slip.sign")),
      ...lines,
      element("p", { class: "pw-slip-small" }, words.say("slip.code-what"), " ", words.say("plain")),
    );
  }

  /**
   * @param {HTMLTextAreaElement} box
   * @param {Element} said
   */
  async copy(box, said) {
    box.focus();
    box.select();
    try {
      await navigator.clipboard.writeText(box.value);
      setText(said, this.words.say("slip.copied"));
    } catch {
      // A page from a folder may not copy by itself; the line is selected for the learner.
      setText(said, this.words.say("slip.selected"));
    }
  }

  destroy() {
    this.sheet?.remove();
    document.body.classList.remove("pw-slip-there");
  }
}

/**
 * @param {string} name
 * @param {string} value
 */
function row(name, value) {
  return element("div", {}, element("dt", {}, name), element("dd", {}, value));
}
