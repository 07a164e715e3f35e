/** A corner of the device's store for one quiz, so that its vines don't mix with the case pages. */

import { Keeper } from "../storage.mjs";

export class ScopedKeeper extends Keeper {
  /**
   * @param {Keeper} keeper
   * @param {string} scope
   */
  constructor(keeper, scope) {
    super(() => {
      if (keeper.shelf === null) throw new Error("the device keeps nothing");
      return keeper.shelf;
    });
    this.scope = scope;
  }

  /**
   * @override
   * @param {string} key
   */
  read(key) {
    return super.read(`${this.scope}:${key}`);
  }

  /**
   * @override
   * @param {string} key
   * @param {unknown} value
   */
  write(key, value) {
    return super.write(`${this.scope}:${key}`, value);
  }
}
