/** What a page hands to its scripts: JSON in script elements that no browser runs. */

/**
 * The JSON in a script element; null without one.
 *
 * @param {ParentNode} root
 * @param {string} name  class of the script element
 * @returns {any}
 */
export function readJson(root, name) {
  return JSON.parse(root.querySelector(`script.${name}`)?.textContent ?? "null");
}
