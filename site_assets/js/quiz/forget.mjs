/** Forgets one learner on a shared device; a trainer's crew list stays. */

import { PREFIX } from "../storage.mjs";

const STAYS = new Set(["crew"]);

/** @param {import("../storage.mjs").Keeper} keeper */
export function forgetLearner({ shelf }) {
  if (shelf === null) return;
  for (const key of Object.keys(shelf)) {
    if (key.startsWith(PREFIX) && !STAYS.has(key.slice(PREFIX.length))) shelf.removeItem(key);
  }
}
