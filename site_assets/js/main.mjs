/** Starts every exercise on the page, and the pictures of its answer. */

import { Exercise } from "./exercise.mjs";
import { offerWholeStory } from "./long_story.mjs";
import { whenRead } from "./page_start.mjs";
import { isAsked, tellDrawing } from "./room_drawing.mjs";
import { Stages } from "./stages.mjs";

function startAll() {
  // Before the exercises: they add more copies of their drawing.
  for (const root of document.querySelectorAll("[data-pencilwood-stages]")) {
    const slug = CSS.escape(root.getAttribute("data-pencilwood-stages") ?? "");
    const svg = document.querySelector(`svg.pw-vine[data-case="${slug}"]`);
    if (svg !== null) {
      new Stages(
        /** @type {HTMLFieldSetElement} */ (root),
        /** @type {SVGSVGElement} */ (svg),
      ).bind();
    }
  }
  for (const root of document.querySelectorAll("[data-pencilwood-exercise]")) {
    const exercise = new Exercise(/** @type {HTMLElement} */ (root));
    exercise.bind();
    offerWholeStory(exercise.root, exercise.words);
  }
}

whenRead(isAsked() ? tellDrawing : startAll);
