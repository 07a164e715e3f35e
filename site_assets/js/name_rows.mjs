/** Rows for the names of places along an arm, by how wide their letters are. */

/** Width of a letter or digit, compared with its height; wider than most, to be safe. */
export const NAME_WIDTH = 0.62;
/** Between two names, compared with a letter's height. */
export const NAME_GAP = 0.35;

/**
 * In which row each name goes so that none covers another; of two, that nearer the head is first.
 *
 * @param {readonly {x: number, text: string, fromHead?: number}[]} names  from left to right
 * @param {number} letter  height of a letter
 * @returns {number[]}
 */
export function rowsOfNames(names, letter) {
  /** @type {{left: number, right: number}[][]} */
  const taken = [];
  const rows = names.map(() => 0);
  const order = names.map((_name, number) => number);
  order.sort((one, other) => (names[one].fromHead ?? 0) - (names[other].fromHead ?? 0));
  for (const number of order) {
    const { x, text } = names[number];
    const half = (text.length * letter * NAME_WIDTH) / 2;
    const [left, right] = [x - half, x + half + letter * NAME_GAP];
    let row = taken.findIndex((names) => names.every((one) => one.right <= left || right <= one.left));
    if (row < 0) row = taken.push([]) - 1;
    taken[row].push({ left, right });
    rows[number] = row;
  }
  return rows;
}
