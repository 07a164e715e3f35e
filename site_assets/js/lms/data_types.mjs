/** Values as the data types of SCORM 1.2 want them (Run-Time Environment, section 3.4.2). */

/** Characters that `cmi.suspend_data` may have (CMIString4096). */
export const LONGEST = 4096;

const LETTERS = "abcdefghijklmnopqrstuvwxyz";

/**
 * CMITimespan, hours to hundredths: `0000:12:03.50`.
 *
 * @param {number} ms
 */
export function timespan(ms) {
  const hundredths = Math.max(0, Math.round(ms / 10));
  const hours = Math.floor(hundredths / 360_000);
  if (hours > 9999) return "9999:59:59.99";
  const rest = hundredths % 360_000;
  const seconds = `${two(Math.floor(rest / 100) % 60)}.${two(rest % 100)}`;
  return `${`${hours}`.padStart(4, "0")}:${two(Math.floor(rest / 6000))}:${seconds}`;
}

/**
 * CMITime, the time of day: `08:05:09`.
 *
 * @param {Date} now
 */
export function timeOfDay(now) {
  return [now.getHours(), now.getMinutes(), now.getSeconds()].map(two).join(":");
}

/**
 * The letter by which a choice is named in a record, null past the last one that there is.
 *
 * @param {number} index
 */
export function letter(index) {
  return LETTERS[index] ?? null;
}

/** @param {number} number */
function two(number) {
  return `${number}`.padStart(2, "0");
}
