/** Starts every exercise on the page. */

import { Exercise } from "./exercise.mjs";

function startAll() {
  for (const root of document.querySelectorAll("[data-pencilwood-exercise]")) {
    new Exercise(/** @type {HTMLElement} */ (root)).bind();
  }
}

if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", startAll);
else startAll();
