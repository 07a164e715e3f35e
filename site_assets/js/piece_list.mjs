/**
 * The wood of one position: its pieces as a row of buttons, and of the piece that is chosen what
 * is known of it, with a native button for every cut that can be made.
 */

import { button, element, setText } from "./dom.mjs";
import { canesToTie } from "./tying.mjs";
import { legalCuts } from "./wood.mjs";

/** @import {Headings} from "./headings.mjs" */
/** @import {PageWords, Sheet, WireSide} from "./types.mjs" */

const USUAL_BUDS = [1, 2, 5];
/** @type {readonly WireSide[]} */
const SIDES = ["left", "right"];

export class PieceList {
  /**
   * @param {Sheet} sheet
   * @param {PageWords} page
   * @param {import("./words.mjs").Words} words
   * @param {Headings} headings
   * @param {{cut: (piece: number, buds: number | null) => void, choose: (piece: number) => void, tie: (piece: number, side: WireSide) => void}} actions
   */
  constructor(sheet, page, words, headings, actions) {
    this.sheet = sheet;
    this.page = page;
    this.words = words;
    this.actions = actions;
    this.position = -1;
    this.piece = -1;
    /** @type {{piece: number, chip: HTMLButtonElement, gone: HTMLElement}[]} */
    this.chips = [];
    this.list = element("ul", { class: "pw-pieces" });
    this.title = element(headings.sub, { tabindex: -1 });
    this.state = element("span", { class: "pw-piece-state" });
    this.facts = element("span");
    this.cuts = element("div", { class: "pw-buttons pw-cuts-now" });
    const about = element("p", {}, this.facts);
    this.root = element("div", { class: "pw-piece" }, this.title, " ", this.state, about, this.cuts);
  }

  /**
   * @param {number} position
   * @param {number} piece  the chosen one, of this position
   * @param {readonly number[]} states
   * @param {boolean} [tying]  whether canes are being tied, so that nothing is cut
   * @param {Map<string, WireSide>} [tied]
   */
  update(position, piece, states, tying = false, tied = new Map()) {
    if (position !== this.position) this.build(position);
    if (piece !== this.piece) this.describe(piece);
    for (const one of this.chips) {
      one.chip.setAttribute("aria-pressed", `${one.piece === piece}`);
      setText(one.gone, states[one.piece] === 0 ? this.words.say("piece.gone") : "");
      one.chip.classList.toggle("pw-piece-gone", states[one.piece] === 0);
    }
    const canes = canesToTie(this.sheet, states);
    this.tellState(states[piece], tied.get(this.sheet.pieces[piece].name), canes);
    if (tying) this.fillTies(canes.includes(piece));
    else this.fillCuts(legalCuts(this.sheet, states, piece));
  }

  /** @param {number} position */
  build(position) {
    this.position = position;
    this.chips = this.sheet.pieces.flatMap((piece, number) => {
      if (piece.position !== position) return [];
      const gone = element("span", { class: "pw-unseen" });
      const chip = button(this.words.wood(piece.name), () => this.actions.choose(number));
      chip.append(" ", gone);
      chip.dataset.piece = piece.name;
      return [{ piece: number, chip, gone }];
    });
    this.list.replaceChildren(...this.chips.map(({ chip }) => element("li", {}, chip)));
  }

  /** @param {number} piece */
  describe(piece) {
    this.piece = piece;
    const { name, carries } = this.sheet.pieces[piece];
    const { label, facts } = this.page.pieces[name] ?? { label: name, facts: "" };
    const names = carries.map((other) => this.words.wood(this.sheet.pieces[other].name)).join(", ");
    const falls = carries.length > 0 ? this.words.say("piece.carries", { names }) : "";
    this.root.dataset.piece = name;
    setText(this.title, label);
    setText(this.facts, [facts, falls].filter((one) => one !== "").join(". "));
    this.cuts.dataset.legal = "";
    const chip = this.chips.find((one) => one.piece === piece)?.chip;
    if (chip) showInRow(chip, this.list);
  }

  /**
   * @param {number} state
   * @param {WireSide | undefined} side
   * @param {readonly number[]} canes  those to be tied
   */
  tellState(state, side, canes) {
    const { words, piece } = this;
    const { kind, states } = this.sheet.pieces[piece];
    const had = states - 1;
    let said = kind === "cane" ? words.count("piece.buds", state) : words.say("piece.kept");
    if (kind === "cane" && state < had) said = words.count("piece.left", state, { had });
    if (state === 0) said = words.say("piece.gone");
    const tie = side !== undefined && canes.includes(piece) ? ` ${words.say(`tie.is.${side}`)}` : "";
    setText(this.state, `${said}.${tie}`);
    this.root.classList.toggle("pw-piece-gone", state === 0);
  }

  /** @param {boolean} canBeTied */
  fillTies(canBeTied) {
    const more = this.words.wood(this.sheet.pieces[this.piece].name);
    const ties = SIDES.map((side) => {
      const press = () => this.actions.tie(this.piece, side);
      return button(this.words.say(`tie.to.${side}`), press, { more, class: "pw-tie-to" });
    });
    this.fill(`tie ${canBeTied}`, canBeTied ? ties : []);
  }

  /** @param {(number | null)[]} legal */
  fillCuts(legal) {
    const key = JSON.stringify(legal);
    if (this.cuts.dataset.legal === key) return;
    const usual = legal.filter((buds) => buds === null || USUAL_BUDS.includes(buds));
    const rest = /** @type {number[]} */ (legal.filter((buds) => !usual.includes(buds)));
    const made = usual.map((buds) => this.cutButton(buds));
    if (usual.length > 1) {
      const leave = element("span", { "aria-hidden": "true" }, this.words.say("cut.leave-short"));
      made.splice(1, 0, /** @type {any} */ (leave));
    }
    this.fill(key, [...made, ...(rest.length > 0 ? [this.otherCut(rest)] : [])]);
  }

  /**
   * The buttons are made anew, so the keyboard's place among them is looked up again.
   *
   * @param {string} key  says what the buttons are
   * @param {Element[]} made
   */
  fill(key, made) {
    if (this.cuts.dataset.legal === key) return;
    const hadFocus = this.cuts.contains(document.activeElement);
    this.cuts.dataset.legal = key;
    this.cuts.replaceChildren(...made);
    if (hadFocus) this.title.focus();
  }

  /** @param {number | null} buds */
  cutButton(buds) {
    const { piece, words } = this;
    const press = () => this.actions.cut(piece, buds);
    const more = words.wood(this.sheet.pieces[piece].name);
    if (buds === null) return button(words.say("cut.off"), press, { more });
    return shortButton(words.count("cut.leave", buds), `${buds}`, press, more);
  }

  /** @param {number[]} choices */
  otherCut(choices) {
    const { piece } = this;
    const name = this.words.wood(this.sheet.pieces[piece].name);
    const select = element(
      "select",
      {},
      ...choices.map((buds) => element("option", { value: buds }, `${buds}`)),
    );
    const unseen = element("span", { class: "pw-unseen" }, this.words.say("cut.other"), " ", name);
    const label = element("label", {}, unseen, " ", select);
    const press = () => this.actions.cut(piece, Number(select.value));
    const cut = button(this.words.say("cut.other-press"), press, { more: name });
    return element("div", { class: "pw-other-cut" }, label, cut);
  }
}

/**
 * A button that shows a number alone; all of its words are read out.
 *
 * @param {string} text  "Leave 2 buds"
 * @param {string} shown  "2"
 * @param {() => void} press
 * @param {string} more
 */
function shortButton(text, shown, press, more) {
  const [before, after] = text.split(shown);
  const unseen = (/** @type {string} */ part) => element("span", { class: "pw-unseen" }, part);
  const made = button("", press, { class: "pw-number" });
  made.append(unseen(before), shown, unseen(`${after} ${more}`));
  return made;
}

/**
 * Moves a row that scrolls sideways, and nothing else, so that one of its buttons shows.
 *
 * @param {HTMLElement} one
 * @param {HTMLElement} row
 */
function showInRow(one, row) {
  const [a, b] = [one.getBoundingClientRect(), row.getBoundingClientRect()];
  if (a.left < b.left) row.scrollLeft -= b.left - a.left;
  else if (a.right > b.right) row.scrollLeft += a.right - b.right;
}
