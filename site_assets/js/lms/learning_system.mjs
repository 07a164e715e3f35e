/** One session with the learning system: every call is checked, and what it refuses is kept. */

import { timespan } from "./data_types.mjs";

/** @import {Api} from "./find_api.mjs" */

/** "Not implemented": an optional part of the record that this system doesn't have. */
const NOT_THERE = 401;

export class LearningSystem {
  /**
   * @param {Api} api
   * @param {() => number} [now]  ms
   */
  constructor(api, now = Date.now) {
    this.api = api;
    this.now = now;
    this.began = now();
    this.committed = this.began;
    this.isOpen = false;
    /** Code of the last refusal; empty while all is well. */
    this.trouble = "";
  }

  /** @returns {boolean} whether the session has begun */
  begin() {
    this.isOpen = this.did(() => this.api.LMSInitialize(""));
    return this.isOpen;
  }

  /**
   * @param {string} name  of the data model, `cmi.core.lesson_status`
   * @returns {string}  empty when the system has none
   */
  get(name) {
    if (!this.isOpen) return "";
    try {
      return `${this.api.LMSGetValue(name) ?? ""}`;
    } catch {
      return "";
    }
  }

  /**
   * @param {string} name
   * @param {string | number} value
   */
  set(name, value) {
    return this.isOpen && this.did(() => this.api.LMSSetValue(name, `${value}`));
  }

  /** Has the system keep what it was told so far. */
  commit() {
    if (!this.isOpen) return false;
    this.committed = this.now();
    this.set("cmi.core.session_time", timespan(this.committed - this.began));
    return this.did(() => this.api.LMSCommit(""));
  }

  /** Ends the session, once. */
  end() {
    if (!this.isOpen) return;
    this.set("cmi.core.session_time", timespan(this.now() - this.began));
    this.did(() => this.api.LMSFinish(""));
    this.isOpen = false;
  }

  /**
   * @param {() => unknown} call
   * @returns {boolean}
   */
  did(call) {
    try {
      // Some systems answer with a boolean instead of the text that the standard asks for.
      if (`${call()}` === "true") return true;
      const code = `${this.api.LMSGetLastError()}`;
      if (Number(code) !== NOT_THERE) this.trouble = code;
    } catch {
      this.trouble = "–";
    }
    return false;
  }
}
