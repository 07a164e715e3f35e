/** How each language writes a number; the program has the same in `words/languages.py`. */

/** @type {Record<string, {decimal: string, thousands: string, percent: string}>} */
export const NUMBER_MARKS = {
  en: { decimal: ".", thousands: ",", percent: "%" },
  es: { decimal: ",", thousands: "\u00a0", percent: " %" },
};
