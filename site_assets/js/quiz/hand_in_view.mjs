/** The last look before a quiz is handed in: which questions are still open. */

import { button, element } from "../dom.mjs";

/** @import {QuizData} from "./quiz_data.mjs" */
/** @import {QuizWords} from "./quiz_words.mjs" */

export class HandInView {
  /**
   * @param {QuizData} data
   * @param {QuizWords} words
   * @param {readonly string[]} open  ids of questions without an answer
   * @param {{go: (at: number) => void, finish: () => void}} actions
   */
  constructor(data, words, open, actions) {
    const heading = element("h2", { tabindex: -1 }, words.say("hand-in.heading"));
    this.root = element("section", { class: "pw-ask pw-ask-hand-in" }, heading);
    if (open.length === 0) this.root.append(element("p", {}, words.say("hand-in.all")));
    else this.root.append(element("p", {}, words.count("hand-in.open", open.length)));
    const rows = data.questions.flatMap(({ id, text }, at) =>
      open.includes(id)
        ? [element("li", {}, button(words.say("hand-in.go", { n: at + 1 }), () => actions.go(at)), " ", text)]
        : [],
    );
    if (rows.length > 0) this.root.append(element("ul", { class: "pw-ask-list" }, ...rows));
    const back = button(words.say("hand-in.back"), () => actions.go(data.questions.length - 1));
    const finish = button(words.say("hand-in.yes"), actions.finish, { class: "pw-main" });
    this.root.append(element("div", { class: "pw-buttons" }, back, finish));
  }

  destroy() {
    this.root.remove();
  }
}
