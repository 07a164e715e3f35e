/** When a page's script may begin. */

/**
 * Begins once the whole page has been read.
 *
 * @param {() => void} start
 */
export function whenRead(start) {
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start);
  else start();
}
