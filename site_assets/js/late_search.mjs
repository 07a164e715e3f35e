/**
 * The search, which is the theme's: its scripts and what they search in are asked for when somebody
 * turns to it, not on every first visit. Pages on which the theme's script has other work to do
 * have it at once.
 *
 * The theme asks again when a key comes up. Words that are pasted or spoken bring no key.
 *
 * A finished page names these scripts, in their order, as `<script type="text/later" src="...">`.
 */

/** As wide as the theme wants it to show the list of headings beside the page. */
const WIDE = matchMedia("(min-width: 60em)");
/** What opens the search, as in the theme. */
const KEYS = ["f", "s", "/"];
const WRITES = "input, select, textarea, [contenteditable]";

/** @param {Document} page */
export function bringSearch(page) {
  const field = /** @type {HTMLElement | null} */ (page.querySelector(".md-search__input"));
  const open = page.querySelector("header [for=__search]");
  let read = false;
  page.addEventListener("DOMContentLoaded", () => (read = true), { once: true });
  // The theme's script begins its work at this event, which may have passed.
  const begin = () => read && page.dispatchEvent(new Event("DOMContentLoaded"));

  let listening = new AbortController();
  const load = () => {
    listening.abort();
    // Without a signal, say: it is tried again at the next turn to the search.
    loadLater(page, begin, listen);
  };
  const listen = () => {
    listening = new AbortController();
    /** @type {(target: EventTarget | null, name: string, heard: (event: any) => void) => void} */
    const on = (target, name, heard) => target?.addEventListener(name, heard, listening);
    on(page.querySelector("#__search"), "change", load);
    on(page.querySelector(".md-search"), "focusin", load);
    // A finger that comes down on it will open it.
    on(open, "pointerdown", load);
    on(page, "keydown", (event) => pressed(event, field));
    on(WIDE, "change", () => isNeededAtOnce(page) && load());
  };
  open?.addEventListener("click", () => field?.focus());
  field?.addEventListener("input", () => field.dispatchEvent(new KeyboardEvent("keyup")));
  if (isNeededAtOnce(page)) load();
  else listen();
}

/** @param {Document} page */
function isNeededAtOnce(page) {
  if (/[?&][qh]=/.test(location.search)) return true;
  if (page.querySelector("article table:not([class])")) return true;
  // A page with an exercise gives the room of the list to the drawing.
  return WIDE.matches && page.querySelector(".pw-headings") && !page.querySelector(".pw-case, .pw-quiz, .pw-first-vine");
}

/**
 * @param {KeyboardEvent} event
 * @param {HTMLElement | null} field
 */
function pressed(event, field) {
  const { key, ctrlKey, metaKey, altKey, target } = event;
  if (ctrlKey || metaKey || altKey || !KEYS.includes(key)) return;
  if (/** @type {Element} */ (target).closest(WRITES)) return;
  event.preventDefault();
  field?.focus();
}

/**
 * @param {Document} page
 * @param {() => void} done
 * @param {() => void} failed
 */
function loadLater(page, done, failed) {
  /** @type {NodeListOf<HTMLScriptElement>} */
  const waiting = page.querySelectorAll('script[type="text/later"]');
  waiting.forEach(({ src }, number) => {
    const script = page.createElement("script");
    script.src = src;
    script.async = false;
    if (number === waiting.length - 1) {
      script.onload = done;
      script.onerror = failed;
    }
    page.head.append(script);
  });
}
