/** What folds up on a page opens where a link leads into it, and on paper. */

/** @param {Document} page */
export function openFolds(page) {
  const lead = () => openAt(page);
  lead();
  addEventListener("hashchange", lead);
  /** @type {HTMLDetailsElement[]} */
  let opened = [];
  addEventListener("beforeprint", () => {
    opened = [...page.querySelectorAll("article")].flatMap((one) => [...one.querySelectorAll("details")]);
    opened = opened.filter((one) => !one.open);
    for (const one of opened) one.open = true;
  });
  addEventListener("afterprint", () => {
    for (const one of opened) one.open = false;
  });
}

/** @param {Document} page */
function openAt(page) {
  const fold = page.getElementById(page.location.hash.slice(1))?.closest("details:not([open])");
  if (fold == null) return;
  /** @type {HTMLDetailsElement} */ (fold).open = true;
  fold.scrollIntoView();
}
