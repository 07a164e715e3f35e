/** When a page's script may begin. */

/**
 * Begins once the whole page has been read.
 *
 * @param {() => void} start
 */
export function whenRead(start) {
  // Once: a late script may be told of it again.
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start, { once: true });
  else start();
}
