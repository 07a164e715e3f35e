/** The device's memory of weak rules, shared by quizzes and practice. */

import { Keeper } from "../storage.mjs";
import { dayNumber } from "./days.mjs";
import * as review from "./review.mjs";

const KEY = "rules";

/**
 * @param {Keeper} keeper
 * @returns {review.Memory}
 */
export function readMemory(keeper) {
  return review.takeUpMemory(whole(keeper).read(KEY));
}

/**
 * @param {Keeper} keeper
 * @param {review.Memory} memory
 */
export function writeMemory(keeper, memory) {
  whole(keeper).write(KEY, memory);
}

/**
 * @param {Keeper} keeper
 * @param {readonly string[]} asked
 * @param {readonly string[]} broken
 */
export function learn(keeper, asked, broken) {
  const day = dayNumber(new Date());
  writeMemory(keeper, review.learn(readMemory(keeper), asked, broken, day));
}

/**
 * The same device's store without a quiz's own corner.
 *
 * @param {Keeper} keeper
 */
function whole(keeper) {
  return new Keeper(() => {
    if (keeper.shelf === null) throw new Error("the device keeps nothing");
    return keeper.shelf;
  });
}
