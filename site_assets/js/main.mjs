/** Starts every exercise on the page, and what stands around exercises. */

import { Exercise } from "./exercise.mjs";
import { Projector } from "./projector.mjs";
import { startQuizPages } from "./quiz/start.mjs";
import { drawingFor, isAsked, tellDrawing } from "./room_drawing.mjs";
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
  startQuizPages();
  for (const root of document.querySelectorAll("[data-pencilwood-projector]")) {
    startProjector(/** @type {HTMLElement} */ (root));
  }
  for (const root of document.querySelectorAll("[data-pencilwood-exercise]")) {
    new Exercise(/** @type {HTMLElement} */ (root)).bind();
  }
}

/**
 * Without its drawing the page stays what it is without a script: a small picture and all steps.
 *
 * @param {HTMLElement} root
 */
async function startProjector(root) {
  const place = /** @type {HTMLElement} */ (root.querySelector(".pwp-drawing"));
  try {
    await drawingFor(place);
    new Projector(root).bind();
  } catch {
    place.classList.add("pwp-without");
  }
}

const start = isAsked() ? tellDrawing : startAll;
if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start);
else start();
