/** The list of a page's headings, which stays in view on a phone: it folds up when one was chosen. */

/** @param {Document} page */
export function foldJumpList(page) {
  const list = /** @type {HTMLDetailsElement | null} */ (page.querySelector(".pw-jump"));
  if (list === null) return;
  // It lies over the text, so that it must not stay open over the heading that was asked for.
  list.addEventListener("click", ({ target }) => {
    if (/** @type {Element} */ (target).closest("a") !== null) list.open = false;
  });
  list.addEventListener("keydown", ({ key }) => {
    if (key !== "Escape" || !list.open) return;
    list.open = false;
    list.querySelector("summary")?.focus();
  });
}
