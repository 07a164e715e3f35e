/** What a drawing tells of its views. */

/**
 * How many views of the same wood a drawing shows: each has the names of its places in a group.
 *
 * @param {ParentNode} svg
 */
export const viewsOf = (svg) => svg.querySelectorAll(".pw-places").length;
