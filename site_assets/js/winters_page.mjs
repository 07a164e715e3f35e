/** Starts the pages of vines over three winters; a script of its own, for no other page uses it. */

import { whenRead } from "./page_start.mjs";
import { Renewal } from "./renewal.mjs";
import { Winters } from "./winters.mjs";

whenRead(() => {
  for (const root of document.querySelectorAll("[data-pencilwood-winters]")) {
    new Winters(/** @type {HTMLElement} */ (root)).bind();
  }
  for (const root of document.querySelectorAll("[data-pencilwood-renewal]")) {
    new Renewal(/** @type {HTMLElement} */ (root)).bind();
  }
});
