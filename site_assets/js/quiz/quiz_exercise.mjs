/** The pruning exercise inside a quiz: it tells what came of it, and can keep it to itself. */

import { Exercise } from "../exercise.mjs";
import { score } from "../scoring.mjs";
import { start } from "../wood.mjs";

/** @import {Broken, PageWords, Result, Sheet} from "../types.mjs" */

/**
 * @typedef {object} Heard
 * @property {(result: Result) => void} scored
 * @property {() => void} reopened  the vine is being changed again, or is fresh
 */

export class QuizExercise extends Exercise {
  /**
   * @param {HTMLElement} root
   * @param {import("../storage.mjs").Keeper} keeper
   * @param {boolean} silent  whether the result is kept back
   * @param {Heard} heard
   */
  constructor(root, keeper, silent, heard) {
    super(root, keeper);
    this.silent = silent;
    this.heard = heard;
    this.scoredHistory = start();
    this.bound = false;
  }

  /**
   * @override
   * @param {boolean} goThere
   */
  showResult(goThere) {
    const result = this.silent ? this.scored() : super.showResult(goThere);
    this.scoredHistory = this.work.history;
    if (goThere) this.heard.scored(result);
    return result;
  }

  /** @override */
  keep() {
    // With the result kept back, a cut after "done" takes the answer back.
    const changed = this.bound && this.scoredHistory !== this.work.history;
    if (this.silent && this.work.done && changed) {
      this.work.done = false;
      this.heard.reopened();
    }
    super.keep();
  }

  /** @override */
  finish() {
    this.scoredHistory = this.work.history;
    super.finish();
  }

  /** @override */
  backToPruning() {
    super.backToPruning();
    this.heard.reopened();
  }

  /** @override */
  bind() {
    super.bind();
    this.bound = true;
  }
}

/**
 * Rules that cost more than in the best pruning of this very vine: what could not be helped is
 * nobody's weakness.
 *
 * @param {Sheet} sheet
 * @param {PageWords} page
 * @param {Result} result
 * @returns {string[]}
 */
export function brokenRules(sheet, page, result) {
  const unavoidable = pointsByRule(score(sheet, page.plan.states, []).broken);
  return [...pointsByRule(result.broken)]
    .filter(([rule, points]) => points > (unavoidable.get(rule) ?? 0))
    .map(([rule]) => rule);
}

/** @param {readonly Broken[]} broken */
function pointsByRule(broken) {
  /** @type {Map<string, number>} */
  const points = new Map();
  for (const one of broken) points.set(one.rule, (points.get(one.rule) ?? 0) + one.points);
  return points;
}
