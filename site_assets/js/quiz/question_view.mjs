/** One question on the page: where it stands in the quiz, its drawing, its controls. */

import { button, element, setText } from "../dom.mjs";
import { ChoiceWidget } from "./choice_widget.mjs";
import { feedbackOn } from "./feedback.mjs";
import { OrderWidget } from "./order_widget.mjs";
import { PartWidget } from "./part_widget.mjs";
import { PruneWidget } from "./prune_widget.mjs";
import { QuestionDrawing } from "./question_drawing.mjs";

/** @import {Keeper} from "../storage.mjs" */
/** @import {Mode} from "./progress.mjs" */
/** @import {Answer, Question, QuizData} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

/**
 * @typedef {object} Desk  what every question of a quiz needs
 * @property {QuizData} data
 * @property {QuizWords} words
 * @property {ParentNode} page  holds the templates of the drawings
 * @property {Map<string, HTMLElement>} exercises  by case
 * @property {Keeper} keeper  the quiz's own corner
 * @property {string} id  unique on the page
 *
 * @typedef {object} QuestionActions
 * @property {(answer: Answer | undefined) => void} changed
 * @property {() => void} check  in practice: tell me about my answer
 * @property {(at: number) => void} go
 * @property {() => void} handIn
 *
 * @typedef {{answer: Answer | undefined, locked: boolean, told: boolean}} Shown
 */

export class QuestionView {
  /**
   * @param {Desk} desk
   * @param {number} at
   * @param {{mode: Mode, done: boolean}} how
   * @param {QuestionActions} actions
   */
  constructor(desk, at, how, actions) {
    this.desk = desk;
    this.at = at;
    this.how = how;
    this.actions = actions;
    this.question = desk.data.questions[at];
    const { drawing } = this.question;
    this.drawing = drawing && new QuestionDrawing(drawing, desk.page, desk.words);
    this.widget = this.makeWidget(this.question);
    this.feedback = element("div");
    this.ask = element("p", { class: "pw-ask-need", role: "alert" });
    this.heading = element("h2", { tabindex: -1 });
    this.root = element("section", { class: `pw-ask pw-ask-is-${this.question.about}` });
    this.buttonKey = "";
    this.layOut();
  }

  layOut() {
    const { words, data } = this.desk;
    const facts = { n: this.at + 1, of: data.questions.length };
    const about = words.say(`about.${this.question.about}`);
    setText(this.heading, words.say("question.heading", { ...facts, about }));
    const bar = element("progress", {
      max: facts.of,
      value: facts.n,
      "aria-label": words.say("question.progress", facts),
    });
    this.root.append(bar, this.heading);
    if (this.question.mustKnow) {
      const tag = element("p", { class: "pw-ask-must" }, words.say("question.must-know"));
      this.root.append(tag);
    }
    // A radio group carries the question as its own legend.
    if (this.question.kind !== "choice") {
      this.root.append(element("p", { class: "pw-ask-text" }, this.question.text));
    }
    const body = element("div", { class: "pw-ask-body" });
    if (this.drawing) body.append(this.drawing.root);
    body.append(this.widget.root);
    this.buttons = element("div", { class: "pw-buttons pw-ask-nav" });
    this.root.append(body, this.ask, this.feedback, this.buttons);
  }

  /**
   * @param {Question} question
   * @returns {{root: HTMLElement, show: (answer: Answer | undefined, locked: boolean) => void, destroy: () => void}}
   */
  makeWidget(question) {
    const { words, exercises, keeper, id } = this.desk;
    const { changed } = this.actions;
    switch (question.kind) {
      case "choice":
        return new ChoiceWidget(question, `${id}-${question.id}`, changed);
      case "part":
        return new PartWidget(question, words, this.drawing, changed);
      case "order":
        return new OrderWidget(question, words, changed);
      default: {
        const root = exercises.get(question.case) ?? element("div");
        const silent = this.how.mode === "test" && !this.how.done;
        return new PruneWidget(question, words, { root, keeper, silent }, changed);
      }
    }
  }

  /** @param {Shown} shown */
  update(shown) {
    const { answer, locked, told } = shown;
    this.widget.show(answer, locked);
    if (answer !== undefined) setText(this.ask, "");
    const said = told ? feedbackOn(this.desk.data, this.question, answer, this.desk.words) : null;
    this.feedback.replaceChildren(...(said === null ? [] : [said]));
    const wanted = this.buttonsFor(told);
    const key = wanted.map(([name]) => name).join();
    if (this.buttonKey === key) return;
    this.buttonKey = key;
    const made = wanted.map(([name, press], place) => {
      const main = place === wanted.length - 1 ? { class: "pw-main" } : {};
      return button(this.desk.words.say(`go.${name}`), press, main);
    });
    this.buttons?.replaceChildren(...made);
  }

  /**
   * The buttons under the question; the last one leads on.
   *
   * @param {boolean} told
   * @returns {[string, () => void][]}
   */
  buttonsFor(told) {
    const { at, actions, how } = this;
    const last = at === this.desk.data.questions.length - 1;
    /** @type {[string, () => void][]} */
    const wanted = at > 0 ? [["back", () => actions.go(at - 1)]] : [];
    const checks = how.mode === "practice" && !how.done && this.question.kind !== "prune";
    if (checks && !told) return [...wanted, ["check", actions.check]];
    if (how.done) wanted.push(["result", actions.handIn]);
    if (!last) return [...wanted, ["next", () => actions.go(at + 1)]];
    if (how.done) return wanted;
    return [...wanted, [how.mode === "test" ? "hand-in" : "end", actions.handIn]];
  }

  /** Says what is missing before an answer can be checked. */
  askForAnswer() {
    setText(this.ask, "");
    setText(this.ask, this.desk.words.say(`need.${this.question.kind}`));
  }

  /** Brings what is said about the answer to whoever reads by ear or by keyboard. */
  readFeedback() {
    const heading = this.feedback.querySelector("h3");
    heading?.focus();
    heading?.scrollIntoView({ block: "center" });
  }

  destroy() {
    this.widget.destroy();
    this.root.remove();
  }
}
