/** What the pages of several winters share: the stage, the table of winters, copies of drawings. */

import { button, element, fill } from "./dom.mjs";

export class WinterStage {
  /**
   * @param {HTMLElement} root
   * @param {Record<string, string>} strings
   * @param {() => void} again  starts all over
   */
  constructor(root, strings, again) {
    this.root = root;
    this.strings = strings;
    this.again = again;
    this.stage = element("div", { class: "pw-winters-stage" });
  }

  /** Takes the place of what is said to people without the script. */
  begin() {
    this.root.querySelector(".pw-fallback")?.remove();
    // The place that was kept for it is as high as the window.
    this.root.classList.add("pw-live");
    this.root.append(this.stage);
  }

  /**
   * @param {string} key
   * @param {Record<string, string | number>} [facts]
   */
  say(key, facts = {}) {
    return fill(this.strings[key], facts);
  }

  /** A line that tells what is missing. */
  missing() {
    return element("p", { class: "pw-winters-missing", role: "alert" });
  }

  /** @param {...HTMLElement} buttons */
  row(...buttons) {
    return element("div", { class: "pw-winters-row" }, ...buttons);
  }

  /**
   * Shows things under a heading, and below them the winters that are done.
   *
   * @param {string} heading
   * @param {readonly Element[]} things
   * @param {HTMLTableElement | null} table
   */
  put(heading, things, table) {
    const first = this.stage.childElementCount === 0;
    const title = element("h3", { tabindex: -1 }, heading);
    const past = table ? [table, this.row(button(this.say("again"), this.again))] : [];
    this.stage.replaceChildren(title, ...things, ...past);
    if (!first) title.focus();
  }

  /**
   * The winters that are done.
   *
   * @param {readonly string[]} head  keys of the headings of its columns
   * @param {readonly (readonly unknown[])[]} rows  a winter's number and what came of it
   */
  table(head, rows) {
    const columns = head.map((key) => element("th", { scope: "col" }, this.say(key)));
    const winters = rows.map(([winter, ...cells]) =>
      element(
        "tr",
        {},
        element("th", { scope: "row" }, String(winter)),
        ...cells.map((cell) => element("td", {}, String(cell))),
      ),
    );
    return element(
      "table",
      { class: "pw-winters-done" },
      element("caption", {}, this.say("table")),
      element("thead", {}, element("tr", {}, ...columns)),
      element("tbody", {}, ...winters),
    );
  }
}

/**
 * A copy of a drawing that has a name of its own, and no id twice on the page.
 *
 * @param {SVGSVGElement} svg
 * @param {string} label
 */
export function copyOf(svg, label) {
  const copy = /** @type {SVGSVGElement} */ (svg.cloneNode(true));
  for (const one of [copy, ...copy.querySelectorAll("[id]")]) one.removeAttribute("id");
  for (const one of copy.querySelectorAll("title, desc")) one.remove();
  copy.removeAttribute("aria-labelledby");
  copy.removeAttribute("aria-describedby");
  copy.setAttribute("aria-label", label);
  return copy;
}

/**
 * Tells wood that fell with the wood below it from wood that was cut off.
 *
 * @param {SVGSVGElement} svg
 */
export function markFallen(svg) {
  for (const group of svg.querySelectorAll("[data-part]")) {
    const name = group.getAttribute("data-grows") ?? "";
    const below = svg.querySelector(`[data-part="${CSS.escape(name)}"]`);
    const falls = below?.classList.contains("pw-gone") ?? false;
    group.classList.toggle("pw-fallen", group.classList.contains("pw-gone") && falls);
  }
}
