/** Days as whole numbers in the learner's own time zone, and the dates that go on paper. */

const DAY_MS = 86_400_000;

/**
 * The number of the local day: tomorrow is one more, whatever the hour and the time zone.
 *
 * @param {Date} now
 */
export function dayNumber(now) {
  return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / DAY_MS;
}

/**
 * The local date as `2026-01-31`, which both languages and every spreadsheet read alike.
 *
 * @param {Date} now
 */
export function isoDate(now) {
  return new Date(dayNumber(now) * DAY_MS).toISOString().slice(0, 10);
}

/**
 * Whether a text is a date that the calendar has, written `2026-01-31`.
 *
 * @param {string} text
 */
export function isDate(text) {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const read = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(read.getTime()) && read.toISOString().startsWith(text);
}

/**
 * A date as a reader of this language says it: `31 Jan 2026`. The month is a word, so nobody takes
 * it for the day. What is no date stays as it is.
 *
 * @param {string} text  `2026-01-31`
 * @param {string} language
 */
export function shownDate(text, language) {
  if (!isDate(text)) return text;
  const asked = /** @type {const} */ ({ day: "numeric", month: "short", year: "numeric", timeZone: "UTC" });
  const parts = new Intl.DateTimeFormat(language, asked).formatToParts(new Date(`${text}T00:00:00Z`));
  const order = ["day", "month", "year"];
  return order.map((type) => parts.find((part) => part.type === type)?.value).join("\u00a0");
}
