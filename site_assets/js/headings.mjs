/** Which headings an exercise uses, so that it fits under any heading of the page it stands in. */

/** @typedef {"h2" | "h3" | "h4" | "h5" | "h6"} HeadingTag */
/** @typedef {{main: HeadingTag, sub: HeadingTag}} Headings */

const USUAL = 3;
const LOWEST = 5;

/**
 * @param {Element} root  with `data-heading="4"` where its headings begin lower than usual
 * @returns {Headings}
 */
export function headingsOf(root) {
  const asked = Number(root.getAttribute("data-heading") ?? USUAL);
  const level = Number.isInteger(asked) && asked >= 2 ? Math.min(asked, LOWEST) : USUAL;
  return {
    main: /** @type {HeadingTag} */ (`h${level}`),
    sub: /** @type {HeadingTag} */ (`h${level + 1}`),
  };
}
