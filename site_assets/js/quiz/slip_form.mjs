/** A slip typed from paper: each field, with what the handbook knows already filled in. */

import { element, setText } from "../dom.mjs";
import { field } from "./fields.mjs";
import { checkSlip, FIELDS } from "./slip.mjs";

/** @import {CrewData} from "./crew_page.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */
/** @import {Slip} from "./slip.mjs" */

export class SlipForm {
  /**
   * @param {CrewData} data
   * @param {QuizWords} words
   * @param {(slip: Slip) => void} add
   */
  constructor(data, words, add) {
    this.data = data;
    this.words = words;
    this.add = add;
    /** @type {Record<string, HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>} */
    this.inputs = this.makeInputs();
    this.need = element("p", { class: "pw-ask-need", role: "alert" });
    const labels = Object.entries(this.inputs).map(([name, input]) =>
      field(words.say(`slip.${name}`), input),
    );
    const press = element("button", { type: "submit", class: "pw-button pw-main" }, words.say("crew.add-typed"));
    const form = element("form", { class: "pw-ask-form", novalidate: true }, ...labels, this.need, press);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.take();
    });
    const heading = element("h2", {}, words.say("crew.type"));
    const hint = element("p", { class: "pw-ask-hint" }, words.say("crew.version-hint"));
    this.root = element("section", { class: "pw-ask" }, heading, hint, form);
    this.fillIn();
  }

  makeInputs() {
    const { data, words } = this;
    const languages = data.languages.map((code) => element("option", { value: code }, words.say(`language.${code}`)));
    const quizzes = data.quizzes.map(({ quiz, title }) => element("option", { value: quiz }, title));
    const language = element("select", {}, ...languages);
    language.value = data.language;
    const quiz = element("select", {}, ...quizzes);
    for (const one of [language, quiz]) one.addEventListener("change", () => this.fillIn());
    return {
      name: text({ maxlength: 80 }),
      language,
      quiz,
      version: text({ autocapitalize: "off" }),
      score: text({ inputmode: "numeric" }),
      date: element("input", { type: "date" }),
      topics: element("textarea", { rows: 3 }),
      code: text({ autocapitalize: "characters" }),
    };
  }

  /** What belongs to the chosen quiz stands there already, and can be changed. */
  fillIn() {
    const quiz = this.data.quizzes.find((one) => one.quiz === this.inputs.quiz.value);
    this.inputs.version.value = quiz?.version ?? "";
    this.inputs.topics.value = (quiz?.topics[this.inputs.language.value] ?? []).join("; ");
  }

  take() {
    const typed = Object.fromEntries(FIELDS.map((name) => [name, this.inputs[name].value]));
    const { slip, fault } = checkSlip(/** @type {Slip} */ (/** @type {unknown} */ (typed)), this.inputs.code.value);
    for (const [name, input] of Object.entries(this.inputs)) {
      if (name === fault) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
    setText(this.need, fault === null ? "" : this.words.say(`fault.${fault}`));
    if (slip === null) return this.inputs[fault]?.focus();
    this.add(slip);
    for (const name of ["name", "score", "code"]) this.inputs[name].value = "";
    this.inputs.name.focus();
  }
}

/** @param {Record<string, string | number>} attributes */
function text(attributes) {
  return element("input", { type: "text", autocomplete: "off", spellcheck: "false", ...attributes });
}
