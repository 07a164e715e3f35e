/** What is done to a vine in an exercise: cuts, ties, steps taken back; each is told in words. */

import { goalWords } from "./bud_goal.mjs";
import { budsKept } from "./scoring.mjs";
import { tieOf } from "./tying.mjs";
import * as wood from "./wood.mjs";

/** @import {Exercise} from "./exercise.mjs" */
/** @import {DoneCut, StubName, ToolName, WireSide} from "./types.mjs" */

export class Shears {
  /** @param {Exercise} exercise */
  constructor(exercise) {
    this.exercise = exercise;
  }

  /**
   * Lets a cut be made once tool and place are chosen. What is taken off whole has no bud to keep
   * away from: the place is neither asked nor charged for.
   *
   * @param {Omit<import("./how_panel.mjs").WaitingCut, "cut">} waiting
   * @param {(how: Pick<DoneCut, "pass" | "tool" | "stub">) => void} cut
   */
  withHow(waiting, cut) {
    const { bench, work } = this.exercise;
    const make = () => {
      const { tool, stub } = work.how;
      const pass = work.history.pass;
      cut({ pass, tool: /** @type {ToolName} */ (tool), stub: stub ?? /** @type {StubName} */ ("right") });
    };
    bench?.how.before({ ...waiting, cut: make });
  }

  /**
   * @param {number} piece
   * @param {number | null} buds
   */
  cut(piece, buds) {
    const { words, sheet } = this.exercise;
    // The button of a cut that was made a moment ago.
    if (!wood.legalCuts(sheet, this.exercise.wood().states, piece).includes(buds)) return;
    const what = buds === null ? words.say("cut.was-off") : words.count("cut.was-to", buds);
    const name = words.wood(sheet.pieces[piece].name);
    const asked = buds === null ? words.say("cut.off") : words.count("cut.leave", buds);
    const waiting = { shortens: buds !== null, what: `${name}: ${asked}.`, at: { piece, buds } };
    this.withHow(waiting, (how) => {
      this.make([{ part: sheet.pieces[piece].name, buds, ...how }], `${name} ${what}.`);
    });
  }

  /**
   * @param {number} piece
   * @param {WireSide} side
   */
  tie(piece, side) {
    const { words, sheet } = this.exercise;
    const told = `${words.wood(sheet.pieces[piece].name)} ${words.say(`tie.was.${side}`)}.`;
    this.make([tieOf(sheet.pieces[piece].name, side)], told);
  }

  shortenAll() {
    const { bench, sheet, words } = this.exercise;
    const what = `${words.count("shorten-all", sheet.cutting.roughBuds[1])}.`;
    this.withHow({ shortens: true, what }, (how) => {
      const { states } = this.exercise.wood();
      const cuts = wood.shortenAll(sheet, states, sheet.cutting.roughBuds[1], how);
      if (cuts.length === 0) return this.exercise.tell(words.say("said.none-long"));
      bench?.views.reframe();
      this.make(cuts, words.count("said.shortened", cuts.length));
    });
  }

  /**
   * @param {DoneCut[]} cuts
   * @param {string} told
   */
  make(cuts, told) {
    const { work, words } = this.exercise;
    const late = wood.isOutOfOrder(work.history, this.exercise.wood().cuts);
    this.exercise.lookBack = false;
    this.turnTo(wood.addCuts(work.history, cuts), told, late ? ` ${words.say("said.out-of-order")}` : "");
  }

  undo() {
    this.travel(wood.undo(this.exercise.work.history), "said.undone");
  }

  redo() {
    this.travel(wood.redo(this.exercise.work.history, this.firstPass), "said.redone");
  }

  startAgain() {
    this.travel(wood.startAgain(this.exercise.work.history, this.firstPass), "said.again");
  }

  get firstPass() {
    return this.exercise.sheet.cutting.passes[0];
  }

  /**
   * @param {wood.History} history
   * @param {string} told  key of what is said
   */
  travel(history, told) {
    if (history !== this.exercise.work.history) this.turnTo(history, this.exercise.words.say(told));
  }

  /**
   * @param {wood.History} history
   * @param {string} told
   * @param {string} [more]
   */
  turnTo(history, told, more = "") {
    const { exercise } = this;
    exercise.work.history = history;
    exercise.showWood();
    const left = exercise.words.count("said.buds-left", budsKept(exercise.sheet, exercise.wood().states));
    const goal = goalWords(exercise.sheet, exercise.words, "said");
    exercise.tell(`${told} ${left} ${goal}`.trim() + more);
  }
}
