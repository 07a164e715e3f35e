/** Starts every exercise on the page, and what stands around exercises. */

import { Exercise } from "./exercise.mjs";
import { Projector } from "./projector.mjs";
import { startQuizPages } from "./quiz/start.mjs";
import { Stages } from "./stages.mjs";
import { Winters } from "./winters.mjs";

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
    new Projector(/** @type {HTMLElement} */ (root)).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-exercise]")) {
    new Exercise(/** @type {HTMLElement} */ (root)).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-winters]")) {
    new Winters(/** @type {HTMLElement} */ (root)).bind();
  }
}

if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", startAll);
else startAll();
