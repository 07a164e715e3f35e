/** One sum as a form: its fields, its answer while they are filled in, and the way to it. */

import { button, element, setText } from "../dom.mjs";
import { FieldInput } from "./field_input.mjs";
import { asTexts, work } from "./questions.mjs";
import { BlockError } from "./range.mjs";
import { onOneLine } from "./shown.mjs";

/** @import {BlockPage, Given, PageQuestion} from "./types.mjs" */
/** @import {Shown} from "./shown.mjs" */

export class SumForm {
  /**
   * @param {BlockPage} page
   * @param {PageQuestion} question
   * @param {Shown} shown
   */
  constructor(page, question, shown) {
    this.page = page;
    this.question = question;
    this.shown = shown;
    const changed = () => this.update();
    this.fields = [...question.asked, ...question.optional].map(
      (name) => new FieldInput(page, question.name, name, question.optional.includes(name), changed),
    );
    this.result = element("div", { class: "pw-answer", role: "status" });
    this.more = element("div", { class: "pw-more" });
    this.root = element("details", { class: "pw-fold pw-sum" });
  }

  build() {
    const { shown } = this;
    for (const field of this.fields) field.build(shown);
    const form = element("form", { novalidate: true }, ...this.fields.map((field) => field.root));
    form.addEventListener("submit", (event) => event.preventDefault());
    form.append(button(shown.say("form.clear"), () => this.clear(), { class: "pw-clear" }));
    this.root.append(
      element("summary", {}, shown.say("form.open"), this.named()),
      form,
      element("h3", {}, shown.say("form.result")),
      this.result,
      this.more,
    );
    this.update();
  }

  /** Tells a reader who cannot see the heading which sum this is. */
  named() {
    const title = this.shown.say(`question.${this.question.name}`);
    return element("span", { class: "pw-unseen" }, `: ${title}`);
  }

  clear() {
    for (const field of this.fields) field.clear(this.shown);
    this.update();
    this.fields[0].inputs[0].focus();
  }

  /** @param {Shown} shown */
  setShown(shown) {
    for (const field of this.fields) field.convert(this.shown, shown);
    this.shown = shown;
    this.update();
  }

  /** @param {boolean} spread */
  setSpread(spread) {
    for (const field of this.fields) field.setSpread(spread);
    this.update();
  }

  update() {
    const { shown } = this;
    /** @type {Given} */
    const given = {};
    for (const field of this.fields) {
      const value = field.read(shown);
      if (value !== undefined) given[field.name] = value;
    }
    const wrong = this.fields.some((field) => !field.trouble.hidden);
    const missing = this.fields.some((field) => !field.optional && field.isEmpty);
    if (wrong) this.say("form.fix");
    else if (missing) this.say("form.waiting");
    else this.answer(given);
  }

  /** @param {string} key */
  say(key) {
    setText(this.result, this.shown.say(key));
    this.more.replaceChildren();
  }

  /** @param {Given} given */
  answer(given) {
    try {
      this.show(asTexts(this.shown, work(this.page, this.question, given)));
    } catch (error) {
      if (!(error instanceof BlockError)) throw error;
      const text = this.shown.say(`problem.${error.problem}`, error.facts);
      const place = this.fields.find((field) => field.name === error.field) ?? this.fields[0];
      place.showTrouble(text);
      this.say("form.fix");
    }
  }

  /** @param {ReturnType<typeof asTexts>} texts */
  show({ figures, steps, remarks, columns, rows }) {
    const list = element("dl", { class: "pw-figures" });
    for (const [label, text] of figures) {
      list.append(element("div", {}, element("dt", {}, label), element("dd", {}, onOneLine(text))));
    }
    const told = remarks.map(([text]) => element("p", { class: "pw-remark" }, text));
    this.result.replaceChildren(list, ...told);
    const way = element("details", { class: "pw-fold pw-way" });
    way.open = this.more.querySelector("details")?.open ?? false;
    way.append(
      element("summary", {}, this.shown.say("form.steps")),
      element("p", {}, this.shown.say("form.steps.likely")),
      element("ol", {}, ...steps.map(([text]) => element("li", {}, text))),
    );
    this.more.replaceChildren(...(rows.length > 0 ? [this.table(columns, rows)] : []), way);
  }

  /**
   * @param {string[][]} columns
   * @param {string[][]} rows
   */
  table(columns, rows) {
    const head = columns.map(([text]) => element("th", { scope: "col" }, text));
    const body = rows.map(([first, ...rest]) =>
      element(
        "tr",
        {},
        element("th", { scope: "row" }, first),
        ...rest.map((text) => element("td", {}, text)),
      ),
    );
    const table = element(
      "table",
      { class: "pw-table" },
      element("thead", {}, element("tr", {}, ...head)),
      element("tbody", {}, ...body),
    );
    const label = this.shown.say(`question.${this.question.name}`);
    return element("div", { class: "pw-scroll", role: "region", tabindex: "0", "aria-label": label }, table);
  }
}
