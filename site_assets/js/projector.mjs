/**
 * One case on a wall. A key, a clicker or a tap shows the next step; between two steps the trainer
 * may cut wood by tapping it, for the room that has just voted.
 */

import { rowsOfNames, turnOf } from "./name_rows.mjs";
import { fanNames } from "./room_names.mjs";
import { viewsOf } from "./views.mjs";
import { boxAround, centred, clearOfTrunk, insideOf } from "./room_places.mjs";

/** @import {Box} from "./room_places.mjs" */

/** Letters are at least this share of the screen's height; projector.css says why. */
const LETTER_SHARE = 0.04;
const NAME_MM = 52;

const NEXT_KEYS = ["ArrowRight", "ArrowDown", "PageDown", " ", "Enter"];
const BACK_KEYS = ["ArrowLeft", "ArrowUp", "PageUp", "Backspace"];

/**
 * What is left of each part at a step.
 *
 * @param {HTMLElement} step
 * @returns {number[]}
 */
function statesOf(step) {
  return (step.dataset.states ?? "").split(" ").map(Number);
}

/**
 * The canes that lie along the wire at a step.
 *
 * @param {HTMLElement} step
 * @returns {string[]}
 */
function tiedOf(step) {
  return (step.dataset.tied ?? "").split("|").filter(Boolean);
}

export class Projector {
  /** @param {HTMLElement} root  `[data-pencilwood-projector]` */
  constructor(root) {
    this.root = root;
    this.svg = /** @type {SVGSVGElement} */ (root.querySelector("svg.pw-vine"));
    this.steps = /** @type {HTMLElement[]} */ ([...root.querySelectorAll(".pwp-step")]);
    this.names = (this.svg.dataset.parts ?? "").split("|");
    this.back = /** @type {HTMLButtonElement} */ (root.querySelector(".pwp-back"));
    this.next = /** @type {HTMLButtonElement} */ (root.querySelector(".pwp-next"));
    this.count = /** @type {HTMLElement} */ (root.querySelector(".pwp-count"));
    const box = this.svg.viewBox.baseVal;
    /** @type {Box} */
    this.whole = { x: box.x, y: box.y, width: box.width, height: box.height };
    const [x, y, width, height] = (this.svg.dataset.near ?? "").split(" ").map(Number);
    /** @type {Box} */
    this.near = { x, y, width, height };
    // The script itself finds the middle: words may lie over the right margin.
    this.svg.setAttribute("preserveAspectRatio", "xMinYMid");
    this.box = this.whole;
    this.at = 0;
    /** @type {number[]} */
    this.states = [];
    /** What is in sight from left to right, in mm. */
    this.shown = { x: box.x, width: box.width };
    /** @type {string[]} */
    this.tied = [];
  }

  bind() {
    document.documentElement.classList.add("pwp-shown");
    for (const one of [this.back, this.next, this.count]) one.hidden = false;
    this.next.addEventListener("click", () => this.go(this.at + 1));
    this.back.addEventListener("click", () => this.go(this.at - 1));
    this.root.querySelector(".pwp-steps")?.addEventListener("click", () => this.go(this.at + 1));
    this.svg.addEventListener("click", (event) => this.cut(/** @type {Element} */ (event.target)));
    document.addEventListener("keydown", (event) => this.key(event));
    // Its room changes with the window, and with the letters of the words below when they are loaded.
    new ResizeObserver(() => this.fit()).observe(this.svg);
    this.go(Number(/^#step-(\d+)$/.exec(location.hash)?.[1] ?? 1) - 1);
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const pressing = event.target instanceof Element && event.target.closest("a, button");
    if (pressing && (event.key === " " || event.key === "Enter")) return;
    if (NEXT_KEYS.includes(event.key)) this.go(this.at + 1);
    else if (BACK_KEYS.includes(event.key)) this.go(this.at - 1);
    else if (event.key === "Home") this.go(0);
    else if (event.key === "End") this.go(this.steps.length - 1);
    else if (event.key === "b" || event.key === ".") {
      document.documentElement.classList.toggle("pwp-black");
      return;
    } else return;
    event.preventDefault();
    document.documentElement.classList.remove("pwp-black");
  }

  /** @param {number} wanted  counted from 0; beyond either end it stays there */
  go(wanted) {
    this.at = Math.max(0, Math.min(this.steps.length - 1, wanted || 0));
    const step = this.steps[this.at];
    this.steps.forEach((one) => one.classList.toggle("pwp-now", one === step));
    for (const one of this.root.querySelectorAll(".pwp-keys, .pwp-scale")) {
      one.classList.toggle("pwp-now", this.at === 0);
    }
    this.count.textContent = `${this.at + 1} / ${this.steps.length}`;
    this.back.disabled = this.at === 0;
    this.next.disabled = this.at === this.steps.length - 1;
    this.states = statesOf(step);
    this.tied = tiedOf(step);
    this.paint();
    this.look(step);
    history.replaceState(null, "", `#step-${this.at + 1}`);
  }

  /** Shows the wood of now: a ghost of what this step takes away, nothing of what went before. */
  paint() {
    const before = statesOf(this.steps[Math.max(0, this.at - 1)]);
    for (const group of this.svg.querySelectorAll("[data-part]")) {
      const number = this.names.indexOf(group.getAttribute("data-part") ?? "");
      const left = this.states[number];
      const below = this.names.indexOf(group.getAttribute("data-grows") ?? "");
      group.classList.toggle("pw-gone", left === 0);
      group.classList.toggle("pwp-earlier", left === 0 && before[number] === 0);
      group.classList.toggle("pw-fallen", left === 0 && below >= 0 && this.states[below] === 0);
      for (const stretch of group.querySelectorAll("[data-from-bud]")) {
        const from = Number(stretch.getAttribute("data-from-bud"));
        stretch.classList.toggle("pw-gone", from > 0 && from >= left);
        stretch.classList.toggle("pwp-earlier", from > 0 && from >= left && from >= before[number]);
      }
    }
    this.layDown();
  }

  /** Shows the canes that are tied by now along the wire, as long as they are left. */
  layDown() {
    for (const laid of this.svg.querySelectorAll(".pw-laid-tie")) {
      const name = laid.getAttribute("data-laid") ?? "";
      const lies = this.tied.includes(name) && this.states[this.names.indexOf(name)] > 0;
      laid.classList.toggle("pwp-lies", lies);
      const standing = this.svg.querySelector(`[data-part="${CSS.escape(name)}"]`);
      standing?.classList.toggle("pwp-tied-away", lies);
    }
  }

  /** @param {HTMLElement} step */
  look(step) {
    const positions = (step.dataset.at ?? "").split(" ").filter(Boolean);
    const places = /** @type {SVGElement[]} */ ([...this.svg.querySelectorAll(".pw-place")]);
    const here = places.filter((place) => positions.includes(place.dataset.position ?? ""));
    for (const place of places) place.classList.toggle("pwp-here", here.includes(place));
    // Until the rough pass is done the long canes are what there is to see.
    const all = positions.length === 0 && this.at < this.steps.length - 1 ? this.whole : this.near;
    // A second view shows all places apart; there is no need to go nearer.
    // A cane along the wire is long.
    const apart = viewsOf(this.svg) > 1 || step.dataset.tied !== undefined ? [] : here;
    const feet = apart.map(({ dataset }) => ({ x: Number(dataset.x), y: Number(dataset.y) }));
    this.box = boxAround(all, feet);
    this.svg.classList.toggle("pwp-near", this.box !== all);
    this.fit();
  }

  /** Puts the drawing in the middle of its room and its letters right, whenever the room changes. */
  fit() {
    const room = this.svg.getBoundingClientRect();
    if (room.width === 0 || room.height === 0) return;
    const words = [...this.root.querySelectorAll(".pwp-scale.pwp-now, .pwp-keys.pwp-now")];
    const seen = words.filter((one) => one.getClientRects().length > 0);
    const beside = seen.filter((one) => getComputedStyle(one).position === "absolute");
    const lefts = beside.map((one) => one.getBoundingClientRect().left - room.left);
    const { x, y, width, height } = centred(this.box, room, Math.min(room.width, ...lefts));
    this.svg.setAttribute("viewBox", `${x} ${y} ${width} ${height}`);
    this.shown = { x, width: room.width / Math.min(room.width / width, room.height / height) };
    // Where there are two views and one is shown, nothing of the other looks in from the side.
    const alone = this.box !== this.whole && viewsOf(this.svg) > 1;
    const beyond = ((this.box.x - x) / this.shown.width) * room.width;
    this.svg.style.clipPath = alone ? `inset(0 ${beyond.toFixed(0)}px)` : "";
    this.letters();
  }

  /** Makes the drawing's letters as large as the text at most, whatever its scale. */
  letters() {
    const { width, height } = this.svg.getBoundingClientRect();
    const pixelsPerMm = Math.min(width / this.box.width, height / this.box.height);
    if (pixelsPerMm === 0) return;
    // On a phone held upright the text is small, and so is all that it names.
    const text = parseFloat(getComputedStyle(this.root).fontSize);
    const letter = Math.min(LETTER_SHARE * window.innerHeight, text) / pixelsPerMm;
    this.svg.style.setProperty("--pwp-letter", `${letter.toFixed(1)}px`);
    fanNames(this.svg, this.shown, letter, this.box.y + this.box.height);
    const names = [...this.svg.querySelectorAll(".pw-places:not(.pw-places-inside) .pw-place-name")];
    const ys = names.map((name) => Number(name.getAttribute("data-y") ?? name.getAttribute("y")));
    // Names below the arm go on downward, names above it upward.
    const above = names.every(
      (name, number) => ys[number] < Number(name.closest(".pw-place")?.getAttribute("data-y")),
    );
    const trunk = above ? 0 : Number(this.svg.dataset.trunk ?? 0);
    const xs = names.map((name) => {
      const text = name.textContent ?? "";
      const own = Number(name.getAttribute("data-x") ?? name.getAttribute("x"));
      const clear = trunk === 0 ? own : clearOfTrunk(own, text, letter, trunk);
      return { x: insideOf(this.shown, clear, text, letter), text, turn: above ? 0 : turnOf(own, clear) };
    });
    const first = above ? Math.max(...ys) : Math.min(...ys) + Math.max(0, letter - NAME_MM);
    rowsOfNames(xs, letter).forEach((row, number) => {
      const name = names[number];
      name.setAttribute("data-y", name.getAttribute("data-y") ?? name.getAttribute("y") ?? "0");
      name.setAttribute("data-x", name.getAttribute("data-x") ?? name.getAttribute("x") ?? "0");
      name.setAttribute("x", xs[number].x.toFixed(1));
      name.setAttribute("y", (first + (above ? -row : row) * letter).toFixed(1));
    });
  }

  /**
   * Cuts where somebody tapped: a cane above the bud below the finger, or wood at its foot. A tap
   * on what is gone takes the cut back.
   *
   * @param {Element} target
   */
  cut(target) {
    const group = target.closest("[data-part]");
    const number = this.names.indexOf(group?.getAttribute("data-part") ?? "");
    if (group === null || number < 0) return;
    const stretch = target.closest("[data-from-bud]");
    const from = Number(stretch?.getAttribute("data-from-bud") ?? 0);
    const gone = this.states[number] === 0 || (from > 0 && from >= this.states[number]);
    if (gone) for (const other of [number, ...this.below(group)]) this.giveBack(other);
    else {
      this.states[number] = from;
      for (const other of this.above(number)) this.states[other] = 0;
    }
    this.paint();
  }

  /** @param {number} number  a part that gets back what this step, or else the vine, had of it */
  giveBack(number) {
    const [uncut, here] = [this.steps[0], this.steps[this.at]].map((one) => statesOf(one)[number]);
    this.states[number] = here > this.states[number] ? here : uncut;
  }

  /**
   * Parts that a part cannot stand without.
   *
   * @param {Element} group
   * @returns {number[]}
   */
  below(group) {
    /** @type {number[]} */
    const found = [];
    let name = group.getAttribute("data-grows");
    while (name !== null) {
      found.push(this.names.indexOf(name));
      const under = this.svg.querySelector(`[data-part="${CSS.escape(name)}"]`);
      name = under?.getAttribute("data-grows") ?? null;
    }
    return found;
  }

  /**
   * Parts that fall with a part that is gone.
   *
   * @param {number} number
   * @returns {number[]}
   */
  above(number) {
    if (this.states[number] > 0) return [];
    const falls = new Set([this.names[number]]);
    // A part stands behind the one that it grows from, so that one round finds all.
    this.names.forEach((name) => {
      const group = this.svg.querySelector(`[data-part="${CSS.escape(name)}"]`);
      if (falls.has(group?.getAttribute("data-grows") ?? "")) falls.add(name);
    });
    return [...falls].map((name) => this.names.indexOf(name));
  }
}
