/** Starts the quizzes, the practice page and the crew list of a page. */

import { unpack } from "../practice_vine.mjs";
import { Quiz } from "../quiz.mjs";
import { CrewPage } from "./crew_page.mjs";
import { PracticePage } from "./practice_page.mjs";
import { readData } from "./quiz_data.mjs";
import { QuizRunner } from "./runner.mjs";

/** Before the page's exercises: a quiz takes those inside it into its own hands. */
export function startQuizPages() {
  for (const found of document.querySelectorAll("[data-pencilwood-quiz]")) {
    const root = /** @type {HTMLElement} */ (found);
    if (readData(root, "pw-quiz-data") === null) new Quiz(root).bind();
    else new QuizRunner(root).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-practice]")) {
    new PracticePage(/** @type {HTMLElement} */ (root), unpack).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-crew]")) {
    new CrewPage(/** @type {HTMLElement} */ (root)).bind();
  }
}
