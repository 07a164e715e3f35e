/** What came of a quiz: the score, the must-know set apart, and what to look at again. */

import { button, element } from "../dom.mjs";
import { linkList } from "./feedback.mjs";
import { isRight, lookAgain, markQuiz } from "./marking.mjs";
import { SlipView } from "./slip_view.mjs";

/** @import {Marks} from "./marking.mjs" */
/** @import {Mode, Progress} from "./progress.mjs" */
/** @import {QuizData} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

export class ResultView {
  /**
   * @param {QuizData} data
   * @param {QuizWords} words
   * @param {Progress} progress
   * @param {{see: (at: number) => void, again: () => void}} actions
   */
  constructor(data, words, progress, actions) {
    this.data = data;
    this.words = words;
    this.progress = progress;
    const marks = markQuiz(data, progress.answers);
    const isTest = progress.mode === "test";
    const verdict = isTest ? (marks.passed ? "passed" : "failed") : "practised";
    const kind = isTest && marks.passed ? "good" : "bad";
    this.heading = element("h2", { tabindex: -1 }, words.say(`result.${verdict}`));
    this.root = element("section", { class: `pw-ask pw-ask-result pw-ask-${kind}` }, this.heading);
    this.root.append(this.score(marks), this.mustKnow(marks), this.again(marks));
    if (isTest && marks.passed) {
      this.slip = new SlipView(data, words, marks.points, progress);
      this.root.append(this.slip.root);
    }
    this.root.append(this.list(actions.see), element("p", { class: "pw-ask-plain" }, words.say("plain")));
    const press = button(words.say("result.again"), actions.again, { class: "pw-main" });
    this.root.append(element("div", { class: "pw-buttons" }, press));
  }

  /** @param {Marks} marks */
  score(marks) {
    const { right, scored, needed, points } = marks;
    const text = this.words.say("result.score", { right, scored, points });
    const need = this.words.say(marks.enough ? "result.enough" : "result.short", { needed, scored });
    return element("p", { class: "pw-ask-score" }, element("strong", {}, text), " ", need);
  }

  /** @param {Marks} marks */
  mustKnow(marks) {
    if (marks.must === 0) return "";
    const key = marks.safe ? "result.must.all" : "result.must.some";
    const text = this.words.say(key, { right: marks.mustRight, of: marks.must });
    const heading = element("h3", {}, this.words.say("result.must"));
    const kind = marks.safe ? "pw-ask-good" : "pw-ask-bad";
    return element("div", { class: `pw-ask-must-set ${kind}` }, heading, element("p", {}, text));
  }

  /** @param {Marks} marks */
  again(marks) {
    const links = lookAgain(this.data, marks.wrong);
    if (links.length === 0) return "";
    const heading = element("h3", {}, this.words.say("result.look-again"));
    return element("div", {}, heading, linkList(this.words.say("result.look-again.lead"), links));
  }

  /** @param {(at: number) => void} see */
  list(see) {
    const { words } = this;
    const rows = this.data.questions.map((question, at) => {
      const answer = this.progress.answers[question.id];
      const state = answer === undefined ? "none" : isRight(question, answer) ? "right" : "wrong";
      const more = words.say("result.question", { n: at + 1 });
      const mark = element("span", { class: `pw-ask-tick pw-ask-tick-${state}` }, words.say(`feedback.${state}`));
      const text = element("span", { class: "pw-ask-step" }, question.text);
      return element("li", {}, text, mark, button(words.say("result.see"), () => see(at), { more }));
    });
    const heading = element("h3", {}, words.say("result.questions"));
    return element("div", {}, heading, element("ol", { class: "pw-ask-list" }, ...rows));
  }

  destroy() {
    this.slip?.destroy();
    this.root.remove();
  }
}
