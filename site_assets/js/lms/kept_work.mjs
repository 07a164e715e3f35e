/**
 * Stands in for the browser's own store while a learning system keeps the work: on a shared
 * computer the next learner must not find the work of the last one.
 */

export class KeptWork {
  /**
   * @param {Map<string, unknown>} found  what the learning system kept, by key
   * @param {() => void} changed
   */
  constructor(found, changed) {
    /** @type {Map<string, string>} */
    this.texts = new Map([...found].map(([key, value]) => [key, JSON.stringify(value)]));
    this.changed = changed;
  }

  /** @param {string} key */
  getItem(key) {
    return this.texts.get(key) ?? null;
  }

  /**
   * @param {string} key
   * @param {string} text
   */
  setItem(key, text) {
    if (this.texts.get(key) === text) return;
    this.texts.set(key, text);
    this.changed();
  }

  /** @param {string} key */
  removeItem(key) {
    if (this.texts.delete(key)) this.changed();
  }
}
