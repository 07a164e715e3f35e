/**
 * Starts the quizzes, the practice page and the crew list; a script of its own, which holds the
 * exercise too: vines are pruned in a quiz as well.
 */

import { whenRead } from "../page_start.mjs";
import { unpack } from "../practice_vine.mjs";
import { CrewPage } from "./crew_page.mjs";
import { PracticePage } from "./practice_page.mjs";
import { QuizRunner } from "./runner.mjs";

whenRead(() => {
  for (const root of document.querySelectorAll("[data-pencilwood-quiz]")) {
    new QuizRunner(/** @type {HTMLElement} */ (root)).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-practice]")) {
    new PracticePage(/** @type {HTMLElement} */ (root), unpack).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-crew]")) {
    new CrewPage(/** @type {HTMLElement} */ (root)).bind();
  }
});
