/** The words of quizzes, practice, slip and crew list: `quiz.` keys of the page's strings. */

import { Words } from "../words.mjs";

export class QuizWords extends Words {
  /** @param {{language: string, units?: "metric" | "us", strings: Record<string, string>}} page */
  constructor({ language, units = "metric", strings }) {
    super({ language, units, strings });
  }

  /**
   * @override
   * @param {string} key  without the leading `quiz.`
   * @param {import("../types.mjs").Facts} [facts]
   */
  say(key, facts = {}) {
    const template = this.strings[`quiz.${key}`];
    return template === undefined ? `quiz.${key}` : this.fill(template, facts);
  }
}
