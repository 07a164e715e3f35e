/**
 * Keeps a learner's work on the device. A browser may refuse (private window, full disk, a
 * file opened from a stick): then everything works, and `isKept` says that nothing is saved.
 */

/** Before every key of ours: other pages of the same address may keep things too. */
export const PREFIX = "pencilwood:";

/** @typedef {Pick<Storage, "getItem" | "setItem" | "removeItem">} Shelf */

/**
 * The browser's own store; inside a learning system, what that system keeps (lms/main.mjs).
 *
 * @returns {Shelf}
 */
function ownShelf() {
  const lent = /** @type {{pencilwoodShelf?: Shelf}} */ (globalThis).pencilwoodShelf;
  return lent ?? globalThis.localStorage;
}

export class Keeper {
  /** @param {() => Shelf} open  gives the store, or throws */
  constructor(open = ownShelf) {
    this.isKept = true;
    /** @type {Shelf | null} */
    this.shelf = null;
    try {
      this.shelf = open();
      this.shelf.setItem(`${PREFIX}try`, "1");
      this.shelf.removeItem(`${PREFIX}try`);
    } catch {
      this.isKept = false;
    }
  }

  /**
   * What was kept under this key; null when nothing was, or when it cannot be read.
   *
   * @param {string} key
   * @returns {unknown}
   */
  read(key) {
    if (!this.isKept || this.shelf === null) return null;
    try {
      return JSON.parse(this.shelf.getItem(PREFIX + key) ?? "null");
    } catch {
      return null;
    }
  }

  /**
   * @param {string} key
   * @param {unknown} value
   * @returns {boolean}  whether it was kept
   */
  write(key, value) {
    if (this.shelf === null) return false;
    try {
      this.shelf.setItem(PREFIX + key, JSON.stringify(value));
      this.isKept = true;
    } catch {
      this.isKept = false;
    }
    return this.isKept;
  }
}
