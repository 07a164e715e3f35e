/** Rows for the names of places along an arm, by how wide their letters are. */

/** Width of a letter or digit, compared with its height; wider than most, to be safe. */
export const NAME_WIDTH = 0.62;
/** Between two names, compared with a letter's height. */
export const NAME_GAP = 0.35;

/** More than any place is away from the head, mm. */
const FAR_MM = 1e6;

/**
 * When a name takes its row: those straight below their places first, from the head outward; then
 * those that the trunk pushes aside, the one nearest the head last and so lowest. No line crosses
 * another then, and no name stands where another place is named. `turn_of` of place_names.py says the same.
 *
 * @param {number} own  where the place is, from the middle of the head
 * @param {number} x  where its name is
 * @returns {number}
 */
export function turnOf(own, x) {
  return Math.abs(x - own) < 1 ? Math.abs(own) : FAR_MM - Math.abs(own);
}

/**
 * In which row each name goes so that none covers another; of two, that with the lower turn is first.
 *
 * @param {readonly {x: number, text: string, turn?: number}[]} names  from left to right
 * @param {number} letter  height of a letter
 * @returns {number[]}
 */
export function rowsOfNames(names, letter) {
  /** @type {{left: number, right: number}[][]} */
  const taken = [];
  const rows = names.map(() => 0);
  const order = names.map((_name, number) => number);
  order.sort((one, other) => (names[one].turn ?? 0) - (names[other].turn ?? 0));
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
