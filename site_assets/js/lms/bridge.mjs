/** Keeps a learning system's record in step with an exercise or a quiz, and says how it stands. */

import { LONGEST } from "./data_types.mjs";
import { KeptWork } from "./kept_work.mjs";
import { exerciseEntries, isBetter, outcomeEntries, quizEntries } from "./record.mjs";
import { pack, unpack } from "./suspended.mjs";

/** @import {Answer} from "../quiz/quiz_data.mjs" */
/** @import {LearningSystem} from "./learning_system.mjs" */
/** @import {Entry, Outcome, Pruned} from "./record.mjs" */
/** @import {Held} from "./suspended.mjs" */

/** So much work at most is lost when a phone dies. */
const COMMIT_AFTER_MS = 60_000;
/** In these modes of the system nothing counts. */
const ONLY_LOOKING = ["browse", "review"];

export class Bridge {
  /**
   * @param {Held} held
   * @param {LearningSystem} system  with its session begun
   * @param {(key: string, facts?: Record<string, string | number>) => void} tell
   */
  constructor(held, system, tell) {
    this.held = held;
    this.system = system;
    this.tell = tell;
    this.records = !ONLY_LOOKING.includes(system.get("cmi.core.lesson_mode"));
    this.best = bestSoFar(system);
    this.work = new KeptWork(unpack(held, system.get("cmi.suspend_data")), () => this.changed());
    this.fits = true;
    this.begin();
  }

  begin() {
    const { system } = this;
    if (this.records) {
      const status = system.get("cmi.core.lesson_status");
      if (status === "" || status === "not attempted") system.set("cmi.core.lesson_status", "incomplete");
      // The record stays one attempt: the best try counts, and work can be taken up again.
      system.set("cmi.core.exit", "suspend");
    }
    this.show();
  }

  changed() {
    if (!this.records) return;
    const { held, system } = this;
    const text = pack(held, (key) => this.read(key));
    this.fits = text.length <= LONGEST;
    if (this.fits) system.set("cmi.suspend_data", text);
    system.set("cmi.core.lesson_location", this.place());
    if (system.now() - system.committed > COMMIT_AFTER_MS) system.commit();
    this.show();
  }

  /**
   * @param {string} key
   * @returns {any}
   */
  read(key) {
    return JSON.parse(this.work.getItem(`pencilwood:${key}`) ?? "null");
  }

  /** Where the learner is, for the trainer to read: the question, or the pass. */
  place() {
    const { quiz, sheets } = this.held;
    if (quiz === null) return this.read(`work:${sheets[0].case}`)?.work.history.pass ?? "";
    const { mode, at } = this.read(`quiz:${quiz.quiz}`) ?? {};
    return mode == null ? "" : (quiz.questions[at]?.id ?? "");
  }

  /** @param {Pruned} pruned */
  exerciseDone(pruned) {
    this.record(pruned, (number) => exerciseEntries(pruned, number, new Date()));
  }

  /** @param {Outcome & {answers: Record<string, Answer>}} handedIn */
  quizDone({ score, passed, answers }) {
    const { quiz } = this.held;
    if (quiz === null) return;
    this.record({ score, passed }, (number) => quizEntries(quiz, answers, number, new Date()));
  }

  /**
   * @param {Outcome} outcome
   * @param {(number: number) => Entry[]} interactions
   */
  record(outcome, interactions) {
    if (!this.records) return;
    const { system } = this;
    const count = system.get("cmi.interactions._count");
    const entries = count === "" ? [] : interactions(Number(count));
    if (isBetter(outcome, this.best)) {
      this.best = { score: outcome.score, passed: outcome.passed };
      entries.push(...outcomeEntries(this.best));
    }
    for (const [name, value] of entries) system.set(name, value);
    system.commit();
    this.show();
  }

  /** Says how the record stands; what went wrong comes first. */
  show() {
    const { system, best } = this;
    const kind = this.held.quiz === null ? "exercise" : "quiz";
    if (!this.records) this.tell("looking");
    else if (system.trouble !== "") this.tell("refused", { code: system.trouble });
    else if (!this.fits) this.tell("too-long");
    else if (best !== null) this.tell(best.passed ? "passed" : "failed", { score: best.score });
    else this.tell(`ready.${kind}`);
  }

  /** The page goes to the background, and may never come back. */
  hidden() {
    if (this.records) this.system.commit();
    this.show();
  }
}

/**
 * What the record holds of earlier sessions.
 *
 * @param {LearningSystem} system
 * @returns {Outcome | null}
 */
function bestSoFar(system) {
  const status = system.get("cmi.core.lesson_status");
  if (status !== "passed" && status !== "failed") return null;
  return { score: Number(system.get("cmi.core.score.raw")), passed: status === "passed" };
}
