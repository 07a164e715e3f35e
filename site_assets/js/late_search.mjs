/**
 * The search, which is the theme's: its scripts and what they search in are asked for when somebody
 * turns to it, not on every first visit. Pages on which the theme's script has other work to do
 * have it at once.
 *
 * A finished page names these scripts, in their order, as `<script type="text/later" src="...">`.
 */

const LATER = 'script[type="text/later"]';
/** As wide as the theme wants it to show the list of headings beside the page. */
const WIDE = "(min-width: 60em)";
/** What opens the search, as in the theme. */
const KEYS = ["f", "s", "/"];
const WRITES = "input, select, textarea, [contenteditable]";

export class LateSearch {
  /** @param {Document} page */
  constructor(page) {
    this.page = page;
    this.field = /** @type {HTMLInputElement | null} */ (page.querySelector(".md-search__input"));
    this.read = false;
    page.addEventListener("DOMContentLoaded", () => (this.read = true), { once: true });
  }

  bind() {
    if (this.isNeededAtOnce()) this.load();
    else this.listen();
  }

  isNeededAtOnce() {
    const { page } = this;
    const asked = new URL(page.location.href).searchParams;
    if (asked.has("q") || asked.has("h")) return true;
    if (page.querySelector("article table:not([class])") !== null) return true;
    // A page with an exercise gives the room of the list to the drawing.
    const list = page.querySelector(".pw-headings") !== null && page.querySelector(".pw-case, .pw-quiz") === null;
    return list && matchMedia(WIDE).matches;
  }

  listen() {
    const { page, field } = this;
    this.listening = new AbortController();
    const { signal } = this.listening;
    const load = () => this.load();
    page.querySelector("#__search")?.addEventListener("change", load, { signal });
    page.querySelector(".md-search")?.addEventListener("focusin", load, { signal });
    const open = page.querySelector("header [for=__search]");
    // A finger that comes down on it will open it.
    open?.addEventListener("pointerdown", load, { signal });
    open?.addEventListener("click", () => field?.focus());
    page.addEventListener("keydown", (event) => this.pressed(event), { signal });
    matchMedia(WIDE).addEventListener("change", () => this.isNeededAtOnce() && load(), { signal });
  }

  /** @param {KeyboardEvent} event */
  pressed(event) {
    const { key, ctrlKey, metaKey, altKey, target } = event;
    if (ctrlKey || metaKey || altKey || !KEYS.includes(key)) return;
    if (/** @type {Element} */ (target).closest(WRITES) !== null) return;
    event.preventDefault();
    this.field?.focus();
  }

  load() {
    this.listening?.abort();
    const waiting = [...this.page.querySelectorAll(LATER)];
    const scripts = waiting.map((one) => {
      const script = this.page.createElement("script");
      script.src = /** @type {HTMLScriptElement} */ (one).src;
      script.async = false;
      return script;
    });
    scripts.at(-1)?.addEventListener("load", () => this.begin());
    // Without a signal, say: it is tried again at the next turn to the search.
    scripts.at(-1)?.addEventListener("error", () => this.listen());
    this.page.head.append(...scripts);
  }

  /** The theme's script begins its work at this event, which may have passed. */
  begin() {
    if (this.read) this.page.dispatchEvent(new Event("DOMContentLoaded"));
  }
}
