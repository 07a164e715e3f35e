/** The wood of one position as a list, with native buttons for every cut that can be made. */

import { button, element, setText } from "./dom.mjs";
import { canesToTie } from "./tying.mjs";
import { legalCuts } from "./wood.mjs";

/** @import {PageWords, Sheet, WireSide} from "./types.mjs" */

const USUAL_BUDS = [1, 2, 5];
/** @type {readonly WireSide[]} */
const SIDES = ["left", "right"];

/**
 * @typedef {object} Row
 * @property {number} piece
 * @property {HTMLLIElement} item
 * @property {HTMLHeadingElement} title
 * @property {HTMLParagraphElement} state
 * @property {HTMLDivElement} cuts
 */

export class PieceList {
  /**
   * @param {Sheet} sheet
   * @param {PageWords} page
   * @param {import("./words.mjs").Words} words
   * @param {{cut: (piece: number, buds: number | null) => void, point: (piece: number | null) => void, tie: (piece: number, side: WireSide) => void}} actions
   */
  constructor(sheet, page, words, actions) {
    this.sheet = sheet;
    this.page = page;
    this.words = words;
    this.actions = actions;
    this.position = -1;
    /** @type {Row[]} */
    this.rows = [];
    this.root = element("ul", { class: "pw-pieces" });
    this.root.addEventListener("focusout", () => actions.point(null));
  }

  /**
   * @param {number} position
   * @param {readonly number[]} states
   * @param {boolean} [tying]  whether canes are being tied, so that nothing is cut
   * @param {Map<string, WireSide>} [tied]
   */
  update(position, states, tying = false, tied = new Map()) {
    if (position !== this.position) this.build(position);
    this.canes = tying ? canesToTie(this.sheet, states) : null;
    for (const row of this.rows) this.updateRow(row, states, tied);
  }

  /** @param {number} position */
  build(position) {
    this.position = position;
    this.rows = this.sheet.pieces.flatMap((piece, number) =>
      piece.position === position ? [this.makeRow(number)] : [],
    );
    this.root.replaceChildren(...this.rows.map(({ item }) => item));
  }

  /**
   * @param {number} piece
   * @returns {Row}
   */
  makeRow(piece) {
    const { name, carries } = this.sheet.pieces[piece];
    const { label, facts } = this.page.pieces[name] ?? { label: name, facts: "" };
    const title = element("h4", { tabindex: -1 }, label);
    const state = element("p", { class: "pw-piece-state" });
    const cuts = element("div", { class: "pw-buttons" });
    const item = element("li", { "data-piece": name }, title, element("p", {}, facts));
    if (carries.length > 0) {
      const names = carries.map((other) => this.words.wood(this.sheet.pieces[other].name)).join(", ");
      item.append(element("p", {}, this.words.say("piece.carries", { names })));
    }
    item.append(state, cuts);
    item.addEventListener("focusin", () => this.actions.point(piece));
    return { piece, item, title, state, cuts };
  }

  /**
   * @param {Row} row
   * @param {readonly number[]} states
   * @param {Map<string, WireSide>} tied
   */
  updateRow(row, states, tied) {
    const { kind } = this.sheet.pieces[row.piece];
    const state = states[row.piece];
    const legal = legalCuts(this.sheet, states, row.piece);
    row.item.classList.toggle("pw-piece-gone", state === 0);
    if (state === 0) setText(row.state, this.words.say("piece.gone"));
    else if (kind === "cane") setText(row.state, this.words.count("piece.buds", state));
    else setText(row.state, this.words.say("piece.kept"));
    const side = tied.get(this.sheet.pieces[row.piece].name);
    if (side !== undefined && canesToTie(this.sheet, states).includes(row.piece)) {
      row.state.textContent += ` ${this.words.say(`tie.is.${side}`)}`;
    }
    if (this.canes === null || this.canes === undefined) this.fillCuts(row, legal);
    else this.fillTies(row, this.canes.includes(row.piece));
  }

  /**
   * @param {Row} row
   * @param {boolean} canBeTied
   */
  fillTies(row, canBeTied) {
    const wanted = `tie ${canBeTied}`;
    if (row.cuts.dataset.legal === wanted) return;
    row.cuts.dataset.legal = wanted;
    const more = this.words.wood(this.sheet.pieces[row.piece].name);
    const ties = SIDES.map((side) => {
      const press = () => this.actions.tie(row.piece, side);
      return button(this.words.say(`tie.to.${side}`), press, { more });
    });
    row.cuts.replaceChildren(...(canBeTied ? ties : []));
  }

  /**
   * The buttons are made anew, so the keyboard's place among them is looked up again.
   *
   * @param {Row} row
   * @param {(number | null)[]} legal
   */
  fillCuts(row, legal) {
    const wanted = JSON.stringify(legal);
    if (row.cuts.dataset.legal === wanted) return;
    row.cuts.dataset.legal = wanted;
    const hadFocus = row.cuts.contains(document.activeElement);
    const usual = legal.filter((buds) => buds === null || USUAL_BUDS.includes(buds));
    const rest = /** @type {number[]} */ (legal.filter((buds) => !usual.includes(buds)));
    row.cuts.replaceChildren(...usual.map((buds) => this.cutButton(row.piece, buds)));
    if (rest.length > 0) row.cuts.append(this.otherCut(row.piece, rest));
    if (hadFocus) row.title.focus();
  }

  /**
   * @param {number} piece
   * @param {number | null} buds
   */
  cutButton(piece, buds) {
    const text = buds === null ? this.words.say("cut.off") : this.words.count("cut.leave", buds);
    const press = () => this.actions.cut(piece, buds);
    return button(text, press, { more: this.words.wood(this.sheet.pieces[piece].name) });
  }

  /**
   * @param {number} piece
   * @param {number[]} choices
   */
  otherCut(piece, choices) {
    const name = this.words.wood(this.sheet.pieces[piece].name);
    const select = element(
      "select",
      {},
      ...choices.map((buds) => element("option", { value: buds }, `${buds}`)),
    );
    const unseen = element("span", { class: "pw-unseen" }, name);
    const label = element("label", {}, this.words.say("cut.other"), " ", unseen, " ", select);
    const press = () => this.actions.cut(piece, Number(select.value));
    const cut = button(this.words.say("cut.other-press"), press, { more: name });
    return element("div", { class: "pw-other-cut" }, label, cut);
  }
}
