/**
 * Finds the learning system as SCORM 1.2 (Run-Time Environment, section 3.3.6.1) says: the object
 * `API` of this window, of its parents up to the top, then of the window that opened them.
 */

/**
 * @typedef {object} Api  what a learning system gives; every call takes and returns text
 * @property {(empty: "") => string} LMSInitialize
 * @property {(empty: "") => string} LMSFinish
 * @property {(name: string) => string} LMSGetValue
 * @property {(name: string, value: string) => string} LMSSetValue
 * @property {(empty: "") => string} LMSCommit
 * @property {() => string} LMSGetLastError
 *
 * @typedef {{parent: unknown, opener: unknown, API?: unknown}} Seen  a window, as far as we look
 */

/** No system nests deeper; a ring of windows must not hold us for ever. */
const DEEPEST = 100;

/**
 * @param {Seen} start
 * @returns {Api | null}
 */
export function findApi(start) {
  let from = /** @type {Seen | null} */ (start);
  for (let turn = 0; from !== null && turn < DEEPEST; turn += 1) {
    const { api, top } = climb(from);
    if (api !== null) return api;
    from = /** @type {Seen | null} */ (look(top, "opener"));
  }
  return null;
}

/** @param {Seen} start */
function climb(start) {
  let here = start;
  for (let depth = 0; depth < DEEPEST; depth += 1) {
    const found = look(here, "API");
    if (found !== null) return { api: /** @type {Api} */ (found), top: here };
    const above = /** @type {Seen | null} */ (look(here, "parent"));
    if (above === null || above === here) break;
    here = above;
  }
  return { api: null, top: here };
}

/**
 * A window of another address refuses to be looked into.
 *
 * @param {Seen} at
 * @param {"API" | "parent" | "opener"} name
 * @returns {unknown}
 */
function look(at, name) {
  try {
    return at[name] ?? null;
  } catch {
    return null;
  }
}
