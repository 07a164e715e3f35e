/**
 * Runs one quiz: one question at a time, kept on the device after every step.
 *
 * What the page gives, inside `<div data-pencilwood-quiz="SLUG">`:
 * - `<script type="application/json" class="pw-quiz-data">` (`QuizData`, quiz_data.mjs);
 * - a `<template data-pencilwood-drawing="NAME">` for each drawing, with one `svg.pw-vine`;
 * - a whole exercise (see exercise.mjs) for each vine to prune;
 * - elements with class `pw-fallback`, hidden once this runs.
 * It keeps `pencilwood:quiz:SLUG` (how far), `pencilwood:quiz:SLUG:...` (its vines) and
 * `pencilwood:rules` (weak rules). It uses headings h2 to h5.
 * A test that is handed in gives a `pencilwood:handed-in` event on the root (it bubbles; `detail`
 * is `{quiz, version, score, passed, answers}`).
 *
 * Keyboard. Everything is a native control in reading order. Each row names its test.
 *   Tab            to the next control                                    (test: quiz-tab)
 *   Up, Down       among the choices: choose another                      (test: quiz-up-down)
 *   Enter, Space   press a button; Space chooses                          (test: quiz-enter-space)
 *   letters        in the list of pieces: the next one that starts so     (test: quiz-letters)
 */

import { element, setText } from "../dom.mjs";
import { readJson } from "../script_json.mjs";
import { Keeper } from "../storage.mjs";
import { isoDate } from "./days.mjs";
import { forgetLearner } from "./forget.mjs";
import { isRight, markQuiz } from "./marking.mjs";
import { learn } from "./memory_shelf.mjs";
import { answered, freshProgress, handedIn, started, takeUpProgress } from "./progress.mjs";
import { QuestionView } from "./question_view.mjs";
import { QuizWords } from "./quiz_words.mjs";
import { sceneOf, viewOf } from "./scenes.mjs";
import { ScopedKeeper } from "./scoped_keeper.mjs";
import { Shared } from "./shared.mjs";

/** @import {Mode, Progress} from "./progress.mjs" */
/** @import {Answer, QuizData} from "./quiz_data.mjs" */

const EXERCISE = "data-pencilwood-exercise";

let made = 0;

export class QuizRunner {
  /**
   * @param {HTMLElement} root
   * @param {Keeper} [keeper]
   */
  constructor(root, keeper = new Keeper()) {
    this.root = root;
    this.keeper = keeper;
    /** @type {QuizData} */
    this.data = readJson(root, "pw-quiz-data");
    this.words = new QuizWords(this.data);
    this.key = `quiz:${this.data.quiz}`;
    this.corner = new ScopedKeeper(keeper, this.key);
    this.shared = new Shared(keeper, this.key, (kept) => takeUpProgress(this.data, kept));
    /** @type {import("./scenes.mjs").Screen} */
    this.screen = "quiz";
    this.reviewed = 0;
    this.scene = "";
    this.heard = this.heard.bind(this);
    /** @type {Map<string, HTMLElement>} vines to prune, by case; each waits for its question */
    this.exercises = new Map();
    /** @type {import("./scenes.mjs").View | undefined} */
    this.view = undefined;
    made += 1;
    this.id = `pwq${made}`;
  }

  bind() {
    for (const one of this.root.querySelectorAll(`[${EXERCISE}]`)) {
      this.exercises.set(one.getAttribute(EXERCISE) ?? "", /** @type {HTMLElement} */ (one));
      // Its question brings it back and starts it: nobody else must.
      one.removeAttribute(EXERCISE);
      one.remove();
    }
    this.unsaved = element("p", { class: "pw-ask-need" }, this.words.say("not-saved"));
    this.said = element("p", { class: "pw-ask-said", role: "status" });
    this.place = element("div");
    this.built = element("div", { class: "pw-quiz-built" }, this.unsaved, this.said, this.place);
    this.root.append(this.built);
    this.root.classList.add("pw-quiz", "pw-live");
    window.addEventListener("storage", this.heard);
    this.update(false);
  }

  /**
   * Another page of this device changed the quiz.
   *
   * @param {StorageEvent} event
   */
  heard(event) {
    if (event.key !== `pencilwood:${this.key}` || !this.shared.refresh()) return;
    this.screen = "quiz";
    this.update(false);
    if (this.said) setText(this.said, this.words.say("other-page"));
  }

  /**
   * @param {(progress: Progress) => Progress} changed
   * @param {boolean} goThere  whether the focus moves to what is new
   */
  change(changed, goThere) {
    this.shared.change(changed);
    if (this.said) setText(this.said, "");
    this.update(goThere);
  }

  /**
   * Shows what has to be seen now, and leaves alone what is there already.
   *
   * @param {boolean} goThere
   */
  update(goThere) {
    if (this.unsaved) this.unsaved.hidden = this.keeper.isKept;
    const progress = this.shared.value;
    const scene = sceneOf(progress, this.screen, this.reviewed);
    if (scene !== this.scene) {
      this.scene = scene;
      this.view?.destroy?.();
      this.view = viewOf(this, progress);
      this.place?.replaceChildren(this.view.root);
    }
    if (this.view instanceof QuestionView) this.updateQuestion(this.view, progress);
    if (!goThere) return;
    /** @type {HTMLElement | null | undefined} */ (this.place?.querySelector("h2"))?.focus();
  }

  /**
   * @param {QuestionView} view
   * @param {Progress} progress
   */
  updateQuestion(view, progress) {
    const { question } = view;
    const answer = progress.answers[question.id];
    const locked = progress.done || progress.checked.includes(question.id);
    const pruned = question.kind === "prune" && answer !== undefined && progress.mode === "practice";
    view.update({ answer, locked, told: locked || pruned });
  }

  /** @param {Mode} mode */
  start(mode) {
    for (const name of this.exercises.keys()) this.corner.write(`work:${name}`, null);
    this.screen = "quiz";
    this.change((progress) => started(progress, mode), true);
  }

  /** @param {number} at */
  go(at) {
    this.screen = "quiz";
    this.change((progress) => ({ ...progress, at }), true);
  }

  /** @param {number} at */
  see(at) {
    this.screen = "review";
    this.reviewed = at;
    this.update(true);
  }

  toResult() {
    this.screen = "quiz";
    this.update(true);
  }

  toStart() {
    this.screen = "quiz";
    this.change((progress) => ({ ...freshProgress(this.data), tries: progress.tries, round: progress.round }), true);
  }

  /**
   * @param {string} id
   * @param {Answer | undefined} answer
   */
  answer(id, answer) {
    this.change((progress) => answered(progress, id, answer), false);
  }

  /** @param {number} at */
  check(at) {
    const { id } = this.data.questions[at];
    const view = /** @type {QuestionView} */ (this.view);
    if (this.shared.value.answers[id] === undefined) return view.askForAnswer();
    this.change((progress) => ({ ...progress, checked: [...new Set([...progress.checked, id])] }), false);
    this.learnFrom([id]);
    view.readFeedback();
  }

  askToHandIn() {
    this.screen = "hand-in";
    this.update(true);
  }

  finish() {
    this.screen = "quiz";
    const wasTest = this.shared.value.mode === "test" && !this.shared.value.done;
    if (wasTest) this.learnFrom(this.data.questions.map(({ id }) => id));
    this.change((progress) => {
      const { passed } = markQuiz(this.data, progress.answers);
      return progress.done ? progress : handedIn(progress, isoDate(new Date()), passed);
    }, true);
    if (wasTest) this.tellHandedIn();
  }

  /** Tells whoever listens on the page what came of a test; practice is nobody's business. */
  tellHandedIn() {
    const { answers } = this.shared.value;
    const { points, passed } = markQuiz(this.data, answers);
    const detail = { quiz: this.data.quiz, version: this.data.version, score: points, passed, answers };
    this.root.dispatchEvent(new CustomEvent("pencilwood:handed-in", { bubbles: true, detail }));
  }

  /**
   * Wrong answers make their rules come back in practice.
   *
   * @param {readonly string[]} ids
   */
  learnFrom(ids) {
    const { answers } = this.shared.value;
    for (const question of this.data.questions.filter(({ id }) => ids.includes(id))) {
      const broken = isRight(question, answers[question.id]) ? [] : question.rules;
      learn(this.keeper, question.rules, broken);
    }
  }

  forget() {
    forgetLearner(this.keeper);
    this.screen = "quiz";
    this.scene = "";
    this.change(() => freshProgress(this.data), true);
    if (this.said) setText(this.said, this.words.say("another.done"));
  }
}
