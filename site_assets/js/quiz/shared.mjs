/**
 * Keeps one thing on the device while more than one page may be open: every change starts from
 * what was kept last, whichever page kept it.
 */

/** @import {Keeper} from "../storage.mjs" */

/** @template {{turn: number}} T */
export class Shared {
  /**
   * @param {Keeper} keeper
   * @param {string} key
   * @param {(kept: unknown) => T} takeUp
   */
  constructor(keeper, key, takeUp) {
    this.keeper = keeper;
    this.key = key;
    this.takeUp = takeUp;
    this.value = takeUp(keeper.read(key));
  }

  /** Takes up what another page kept; tells whether that is newer. */
  refresh() {
    const kept = this.keeper.read(this.key);
    if (kept === null) return false;
    const theirs = this.takeUp(kept);
    if (theirs.turn <= this.value.turn) return false;
    this.value = theirs;
    return true;
  }

  /** @param {(value: T) => T} changed */
  change(changed) {
    this.refresh();
    const value = changed(this.value);
    this.value = { ...value, turn: this.value.turn + 1 };
    this.keeper.write(this.key, this.value);
  }
}
