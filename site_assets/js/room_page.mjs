/** Starts the page for a room; a script of its own, for a page with a vine has no use for it. */

import { whenRead } from "./page_start.mjs";
import { Projector } from "./projector.mjs";
import { drawingFor } from "./room_drawing.mjs";

/**
 * Without its drawing the page stays what it is without a script: a small picture and all steps.
 *
 * @param {HTMLElement} root
 */
async function start(root) {
  const place = /** @type {HTMLElement} */ (root.querySelector(".pwp-drawing"));
  try {
    await drawingFor(place);
    new Projector(root).bind();
  } catch {
    place.classList.add("pwp-without");
  }
}

whenRead(() => {
  for (const root of document.querySelectorAll("[data-pencilwood-projector]")) {
    start(/** @type {HTMLElement} */ (root));
  }
});
