/** Starts the page of a vine over three winters; a script of its own, for no other page uses it. */

import { Winters } from "./winters.mjs";

function startAll() {
  for (const root of document.querySelectorAll("[data-pencilwood-winters]")) {
    new Winters(/** @type {HTMLElement} */ (root)).bind();
  }
}

if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", startAll);
else startAll();
