/** One right answer among several: a group of radio buttons. */

import { element } from "../dom.mjs";

/** @import {Answer, ChoiceQuestion} from "./quiz_data.mjs" */

export class ChoiceWidget {
  /**
   * @param {ChoiceQuestion} question
   * @param {string} id  unique on the page
   * @param {(answer: Answer) => void} changed
   */
  constructor(question, id, changed) {
    this.labels = question.choices.map(({ text }, number) => {
      const input = element("input", { type: "radio", name: id, value: number });
      input.addEventListener("change", () => changed(number));
      return element("label", { class: "pw-radio" }, input, element("span", {}, text));
    });
    const legend = element("legend", {}, question.text);
    this.root = element("fieldset", { class: "pw-ask-choices" }, legend, ...this.labels);
  }

  /**
   * @param {Answer | undefined} answer
   * @param {boolean} locked
   */
  show(answer, locked) {
    this.labels.forEach((label, number) => {
      const input = /** @type {HTMLInputElement} */ (label.firstElementChild);
      input.checked = number === answer;
      // Only what was not chosen goes: the chosen one can still be read out.
      input.disabled = locked && number !== answer;
      label.classList.toggle("pw-ask-off", input.disabled);
    });
  }

  destroy() {}
}
