/** Starts the quizzes, the practice page and the crew list of a page. */

import { unpack } from "../practice_vine.mjs";
import { CrewPage } from "./crew_page.mjs";
import { PracticePage } from "./practice_page.mjs";
import { QuizRunner } from "./runner.mjs";

/** Before the page's exercises: a quiz takes those inside it into its own hands. */
export function startQuizPages() {
  for (const root of document.querySelectorAll("[data-pencilwood-quiz]")) {
    new QuizRunner(/** @type {HTMLElement} */ (root)).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-practice]")) {
    new PracticePage(/** @type {HTMLElement} */ (root), unpack).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-crew]")) {
    new CrewPage(/** @type {HTMLElement} */ (root)).bind();
  }
}
