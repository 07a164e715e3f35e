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
import { Keeper } from "../storage.mjs";
import { isoDate } from "./days.mjs";
import { forgetLearner } from "./forget.mjs";
import { HandInView } from "./hand_in_view.mjs";
import { isRight, markQuiz, openQuestions } from "./marking.mjs";
import { learn } from "./memory_shelf.mjs";
import { answered, freshProgress, handedIn, started, takeUpProgress } from "./progress.mjs";
import { QuestionView } from "./question_view.mjs";
import { readData } from "./quiz_data.mjs";
import { QuizWords } from "./quiz_words.mjs";
import { ResultView } from "./result_view.mjs";
import { ScopedKeeper } from "./scoped_keeper.mjs";
import { Shared } from "./shared.mjs";
import { startView } from "./start_view.mjs";

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
    this.data = readData(root, "pw-quiz-data");
    this.words = new QuizWords(this.data);
    this.key = `quiz:${this.data.quiz}`;
    this.corner = new ScopedKeeper(keeper, this.key);
    this.shared = new Shared(keeper, this.key, (kept) => takeUpProgress(this.data, kept));
    /** @type {"quiz" | "hand-in" | "review"} what is shown besides how far it has come */
    this.screen = "quiz";
    this.reviewed = 0;
    this.scene = "";
    this.heard = this.heard.bind(this);
    made += 1;
    this.id = `pwq${made}`;
  }

  bind() {
    /** @type {Map<string, HTMLElement>} */
    this.exercises = new Map();
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

  destroy() {
    window.removeEventListener("storage", this.heard);
    this.view?.destroy?.();
    this.built?.remove();
    for (const [name, one] of this.exercises ?? []) {
      one.setAttribute(EXERCISE, name);
      this.root.append(one);
    }
    this.root.classList.remove("pw-live");
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
    const scene = this.sceneOf(progress);
    if (scene !== this.scene) {
      this.scene = scene;
      this.view?.destroy?.();
      this.view = this.makeView(progress);
      this.place?.replaceChildren(this.view.root);
    }
    if (this.view instanceof QuestionView) this.updateQuestion(this.view, progress);
    if (!goThere) return;
    /** @type {HTMLElement | null | undefined} */ (this.place?.querySelector("h2"))?.focus();
  }

  /** @param {Progress} progress */
  sceneOf({ mode, done, at, tries, turn, round }) {
    if (mode === null) return `start ${tries}`;
    if (done && this.screen === "review") return `review ${this.reviewed}`;
    if (done) return `result ${turn}`;
    return this.screen === "hand-in" ? `hand-in ${turn}` : `${mode} ${at} ${round}`;
  }

  /**
   * @param {Progress} progress
   * @returns {{root: HTMLElement, destroy?: () => void}}
   */
  makeView(progress) {
    const { data, words } = this;
    if (progress.mode === null) {
      const actions = {
        start: (/** @type {Mode} */ mode) => this.start(mode),
        allow: () => this.change((now) => ({ ...now, tries: 0 }), true),
        forget: () => this.forget(),
      };
      return { root: startView(data, words, progress, actions) };
    }
    if (progress.done && this.screen !== "review") {
      const actions = { see: (/** @type {number} */ at) => this.see(at), again: () => this.toStart() };
      return new ResultView(data, words, progress, actions);
    }
    if (this.screen === "hand-in") return this.handInView(progress);
    return this.questionView(progress.mode, progress.done, progress.at);
  }

  /** @param {Progress} progress */
  handInView(progress) {
    const open = openQuestions(this.data, progress.answers);
    return new HandInView(this.data, this.words, open, {
      go: (at) => this.go(at),
      finish: () => this.finish(),
    });
  }

  /**
   * @param {Mode} mode
   * @param {boolean} done
   * @param {number} at
   */
  questionView(mode, done, at) {
    const { data, words, root, exercises, corner, id } = this;
    const page = { data, words, page: root, exercises: exercises ?? new Map(), keeper: corner, id };
    const shown = done ? this.reviewed : at;
    return new QuestionView(page, shown, { mode, done }, {
      changed: (answer) => this.answer(data.questions[shown].id, answer),
      check: () => this.check(shown),
      go: (to) => (done ? this.see(to) : this.go(to)),
      handIn: () => (done ? this.toResult() : this.askToHandIn()),
    });
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
    for (const name of this.exercises?.keys() ?? []) this.corner.write(`work:${name}`, null);
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
