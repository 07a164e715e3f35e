/** Areas on the screen, in px: which meet, and what lies in one. */

/** @typedef {{left: number, right: number, top: number, bottom: number}} Area */

/**
 * @param {Area} one
 * @param {Area} other
 * @param {number} across  px that have to be between them, from side to side
 * @param {number} [down]  and from top to bottom
 */
export function meet(one, other, across, down = 0) {
  return (
    one.left < other.right + across &&
    other.left < one.right + across &&
    one.top < other.bottom + down &&
    other.top < one.bottom + down
  );
}

/**
 * @param {Area} area
 * @param {number} x
 * @param {number} y
 */
export const isIn = ({ left, right, top, bottom }, x, y) => left < x && x < right && top < y && y < bottom;
