/**
 * Types of the block's sums.
 *
 * @typedef {import("./fraction.mjs").Fraction} Fraction
 * @typedef {import("./range.mjs").Range} Range
 *
 * @typedef {object} PageMeasure
 * @property {string} kind
 * @property {string} metric
 * @property {string} us
 * @property {boolean} whole
 * @property {string} word
 * @property {boolean} exact
 *
 * @typedef {object} PageField
 * @property {string} measure  empty for a formula or a choice
 * @property {string} low  bounds in our own units, as a fraction
 * @property {string} high
 * @property {string[]} choices
 * @property {boolean} ranged
 * @property {string} standard  a formula or a choice; empty where there is none
 * @property {[string, string, string] | null} usual  the default in our own units
 * @property {number | null} digits  of the default
 * @property {{metric: string, us: string}} note  what is usual, how well it is known, from where
 *
 * @typedef {object} PageQuestion
 * @property {string} name
 * @property {string[]} asked
 * @property {string[]} optional
 *
 * @typedef {object} BlockPage
 * @property {string} language
 * @property {"metric" | "us"} show
 * @property {Record<string, string>} strings
 * @property {Record<string, Record<string, string>>} units
 * @property {Record<string, PageMeasure>} measures
 * @property {Record<string, PageField>} fields
 * @property {PageQuestion[]} questions
 * @property {Record<string, Record<string, [string, string]>>} bands
 *
 * @typedef {{first: Fraction, further: Fraction}} Formula
 * @typedef {Range | Formula | string} Value
 * @typedef {Record<string, any>} Given  values by field name; every sum names those it takes
 *
 * @typedef {[measure: string, value: Range | Fraction | number]} Fact
 * @typedef {{name: string, facts: Record<string, Fact>}} Sentence
 * @typedef {{name: string, measure: string, value: Range, years?: number}} Figure
 *
 * @typedef {object} Answer
 * @property {string} question
 * @property {Figure[]} figures
 * @property {Sentence[]} steps
 * @property {Sentence[]} remarks
 * @property {Figure[][]} rows
 */

export {};
