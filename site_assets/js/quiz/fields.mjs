/** Labels beside their controls. */

import { element } from "../dom.mjs";

let made = 0;

/**
 * A control under its label. The label stands beside it, not around it: a list inside its label
 * would be read out as part of its own name.
 *
 * @param {string} text
 * @param {HTMLElement} control
 */
export function field(text, control) {
  made += 1;
  control.id = `pwqf${made}`;
  return element("div", { class: "pw-ask-field" }, element("label", { for: control.id }, text), control);
}
