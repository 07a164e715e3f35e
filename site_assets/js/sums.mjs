/** Starts the sums of the block; a script of its own, for a page with a vine has no use for them. */

import { BlockForms } from "./block_forms.mjs";

function startAll() {
  for (const root of document.querySelectorAll("[data-pencilwood-block-forms]")) {
    new BlockForms(/** @type {HTMLElement} */ (root)).bind();
  }
}

if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", startAll);
else startAll();
