/** Starts the sums of the block; a script of its own, for a page with a vine has no use for them. */

import { BlockForms } from "./block_forms.mjs";
import { whenRead } from "./page_start.mjs";

whenRead(() => {
  for (const root of document.querySelectorAll("[data-pencilwood-block-forms]")) {
    new BlockForms(/** @type {HTMLElement} */ (root)).bind();
  }
});
