/** A whole vine to prune is the question: the exercise of the page, at home in the quiz. */

import { element, setText } from "../dom.mjs";
import { learn } from "./memory_shelf.mjs";
import { brokenRules, QuizExercise } from "./quiz_exercise.mjs";

/** @import {Keeper} from "../storage.mjs" */
/** @import {Answer, PruneQuestion} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

export class PruneWidget {
  /**
   * @param {PruneQuestion} question
   * @param {QuizWords} words
   * @param {{root: HTMLElement, keeper: Keeper, silent: boolean}} exercise
   * @param {(answer: Answer | undefined) => void} changed
   */
  constructor(question, words, exercise, changed) {
    this.words = words;
    this.silent = exercise.silent;
    this.said = element("p", { class: "pw-ask-said", role: "status" });
    const hint = words.say(exercise.silent ? "prune.hint.test" : "prune.hint.practice");
    this.root = element(
      "div",
      { class: "pw-ask-prune" },
      element("p", { class: "pw-ask-hint" }, hint),
      exercise.root,
      this.said,
    );
    this.exercise = new QuizExercise(exercise.root, exercise.keeper, exercise.silent, {
      scored: (result) => {
        const { sheet, page } = this.exercise;
        // A test tells nothing before it is handed in, not even to the practice page.
        if (!exercise.silent) learn(exercise.keeper, question.rules, brokenRules(sheet, page, result));
        changed({ passed: result.passed, score: result.score });
      },
      reopened: () => changed(undefined),
    });
    this.exercise.bind();
  }

  /** @param {Answer | undefined} answer */
  show(answer) {
    setText(this.said, this.silent && answer !== undefined ? this.words.say("prune.kept") : "");
  }

  destroy() {
    this.exercise.destroy();
    this.exercise.root.remove();
  }
}
