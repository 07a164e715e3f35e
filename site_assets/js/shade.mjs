/**
 * Light or dark pages, chosen in the masthead. What was chosen, or what the device asks for, is set
 * before the page is painted (theme/partials/javascripts/palette.html). It is kept under the name
 * and in the form that the theme's own script uses, which runs only on some pages.
 */

const KEPT = "__palette";
const DARK = "slate";

/** @typedef {{__md_set?: (name: string, value: unknown) => void}} Theme */

/** @param {Document} page */
export function bindShade(page) {
  const form = /** @type {HTMLElement | null} */ (page.querySelector("[data-md-component=palette]"));
  if (form === null) return;
  const options = [...form.querySelectorAll("input")];
  const scheme = page.body.dataset.mdColorScheme;
  const shown = options.findIndex((one) => one.dataset.mdColorScheme === scheme);
  offerOther(options, Math.max(0, shown));
  form.addEventListener("change", ({ target }) => {
    choose(page, options, options.indexOf(/** @type {HTMLInputElement} */ (target)));
  });
  form.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    // The theme's script would change it back again.
    event.stopImmediatePropagation();
    const next = (options.findIndex((one) => one.checked) + 1) % options.length;
    options[next].click();
    options[next].focus();
  });
}

/**
 * @param {Document} page
 * @param {HTMLInputElement[]} options
 * @param {number} index
 */
function choose(page, options, index) {
  const { mdColorMedia, mdColorScheme, mdColorPrimary, mdColorAccent } = options[index].dataset;
  page.body.dataset.mdColorMedia = mdColorMedia;
  page.body.dataset.mdColorScheme = mdColorScheme;
  offerOther(options, index);
  // What the browser draws itself, such as the bar that scrolls, goes with the page.
  page.documentElement.style.colorScheme = mdColorScheme === DARK ? "dark" : "light";
  const color = { media: mdColorMedia, scheme: mdColorScheme, primary: mdColorPrimary, accent: mdColorAccent };
  /** @type {Theme} */ (window).__md_set?.(KEPT, { index, color });
}

/**
 * The button that stands behind an option leads to the other one.
 *
 * @param {HTMLInputElement[]} options
 * @param {number} index  of the one that is shown
 */
function offerOther(options, index) {
  options.forEach((one, number) => {
    one.checked = number === index;
    if (one.nextElementSibling instanceof HTMLElement) one.nextElementSibling.hidden = number !== index;
  });
}
