/** What the search of a page is made of, beside the theme's script, so that it can be kept too. */

/**
 * @param {Document} page
 * @returns {string[]}  addresses: what is searched, what searches, and the stems of the page's words
 */
export function searchFiles(page) {
  const text = page.querySelector("#__config")?.textContent;
  if (!text) return [];
  /** @type {{base: string, search: string}} */
  const { base, search } = JSON.parse(text);
  const root = new URL(base.endsWith("/") ? base : `${base}/`, page.location.href);
  const worker = new URL(search, page.location.href);
  // The names of the theme's files, as its worker asks for them; English has no stems.
  const { lang } = page.documentElement;
  const stems = lang === "en" ? [] : ["stemmer.support", lang];
  const lunr = stems.map((one) => new URL(`../lunr/min/lunr.${one}.min.js`, worker));
  return [new URL("search/search_index.json", root), worker, ...lunr].map(String);
}
