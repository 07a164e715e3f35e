/** Small makers for what a sum answers. */

/** @import {Answer, Fact, Figure, Sentence} from "./types.mjs" */
/** @import {Range} from "./range.mjs" */

/**
 * @param {string} name
 * @param {string} measure
 * @param {Range} value
 * @returns {Figure}
 */
export const figure = (name, measure, value) => ({ name, measure, value });

/**
 * @param {string} name
 * @param {Record<string, Fact>} [facts]
 * @returns {Sentence}
 */
export const sentence = (name, facts = {}) => ({ name, facts });

/**
 * @param {string} question
 * @param {Figure[]} figures
 * @param {Sentence[]} steps
 * @param {Sentence[]} [remarks]
 * @param {Figure[][]} [rows]
 * @returns {Answer}
 */
export const answer = (question, figures, steps, remarks = [], rows = []) => ({
  question,
  figures,
  steps,
  remarks,
  rows,
});
