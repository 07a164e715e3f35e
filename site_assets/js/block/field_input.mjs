/** One question of a form: a native input or three, with its unit, what is usual, and its trouble. */

import { element, setText } from "../dom.mjs";
import { Fraction } from "./fraction.mjs";
import { readField } from "./questions.mjs";
import { BlockError, Range, significant } from "./range.mjs";
import { onOneLine } from "./shown.mjs";

/** @import {BlockPage, PageField, Value} from "./types.mjs" */
/** @import {Shown} from "./shown.mjs" */

const PARTS = /** @type {const} */ (["low", "likely", "high"]);
// Enough to find the same number again after a change of units, few enough to read.
const DIGITS_OF_USUAL = 3;

export class FieldInput {
  /**
   * @param {BlockPage} page
   * @param {string} form  name of the sum, to keep ids apart
   * @param {string} name
   * @param {boolean} optional
   * @param {() => void} changed
   */
  constructor(page, form, name, optional, changed) {
    this.page = page;
    this.name = name;
    this.optional = optional;
    /** @type {PageField} */
    this.field = page.fields[name];
    this.id = `pw-sum-${form}-${name}`;
    this.spread = false;
    const { usual } = this.field;
    this.usualIsRange = usual !== null && usual[0] !== usual[2];
    this.trouble = element("p", { class: "pw-trouble", id: `${this.id}-trouble`, hidden: true });
    this.asked = element("span");
    this.unit = element("span", { class: "pw-unit" });
    this.note = element("p", {
      class: "pw-usual",
      id: `${this.id}-note`,
      hidden: this.field.note.metric === "",
    });
    this.inputs = this.makeInputs(changed);
    this.root = element("div", { class: "pw-field" });
  }

  /** @param {() => void} changed */
  makeInputs(changed) {
    const described = `${this.id}-note ${this.id}-trouble`;
    if (this.field.choices.length > 0) {
      const select = element("select", { id: this.id, "aria-describedby": described });
      for (const value of this.field.choices) {
        const text = this.page.strings[`choice.${this.name}.${value}`];
        select.append(element("option", { value, selected: value === this.field.standard }, text));
      }
      select.addEventListener("change", changed);
      return [select];
    }
    const parts = this.field.ranged && this.field.measure !== "" ? PARTS : [PARTS[1]];
    return parts.map((part) => {
      const input = element("input", {
        type: "text",
        inputmode: this.field.measure === "" ? "text" : "decimal",
        autocomplete: "off",
        id: part === "likely" ? this.id : `${this.id}-${part}`,
        "aria-describedby": described,
      });
      input.addEventListener("input", changed);
      return input;
    });
  }

  /**
   * Puts the field together and fills in what is usual.
   *
   * @param {Shown} shown
   */
  build(shown) {
    const label = element("label", { for: this.id }, this.asked, " ", this.unit);
    if (this.optional) {
      label.append(element("span", { class: "pw-optional" }, ` (${shown.say("form.optional")})`));
    }
    const row = element("div", { class: "pw-sum-parts" });
    if (this.inputs.length === 1) row.append(this.inputs[0]);
    else this.inputs.forEach((input, n) => row.append(this.part(shown, PARTS[n], input)));
    this.root.append(label, row, this.trouble, this.note);
    this.clear(shown);
  }

  /**
   * @param {Shown} shown
   * @param {(typeof PARTS)[number]} part
   * @param {HTMLInputElement | HTMLSelectElement} input
   */
  part(shown, part, input) {
    const words = element("span", { id: `${this.id}-${part}-word` }, shown.say(`form.${part}`));
    // The label of the field names the middle input already; its ends need both names.
    if (part !== "likely") {
      const full = `${shown.asked(this.name)}: ${shown.say(`form.${part}`)}`;
      input.setAttribute("aria-label", full);
    }
    return element("div", { class: `pw-sum-part pw-sum-part-${part}` }, words, input);
  }

  /**
   * Back to what is usual.
   *
   * @param {Shown} shown
   */
  clear(shown) {
    this.setUnit(shown);
    this.showTrouble("");
    const { choices, standard, usual } = this.field;
    if (choices.length > 0 || this.field.measure === "") this.inputs[0].value = standard;
    else this.write(shown, usual === null || this.optional ? null : usual.map(Fraction.of));
  }

  /**
   * @param {Shown} shown
   * @param {Fraction[] | null} values  in our own units
   */
  write(shown, values) {
    const factor = shown.factor(this.page.measures[this.field.measure]);
    const texts = values?.map((one) =>
      shown.decimal(significant(one.over(factor), DIGITS_OF_USUAL), false),
    );
    if (this.inputs.length === 1) {
      this.inputs[0].value = texts ? texts[1] : "";
      return;
    }
    const isRange = texts !== undefined && texts[0] !== texts[2];
    this.inputs.forEach((input, n) => {
      input.value = texts && (n === 1 || isRange) ? texts[n] : "";
    });
    this.setSpread(this.spread);
  }

  /**
   * Asks, and tells what is usual, in the reader's units.
   *
   * @param {Shown} shown
   */
  setUnit(shown) {
    setText(this.asked, shown.asked(this.name));
    setText(this.note, onOneLine(this.field.note[shown.units]));
    if (this.field.measure === "") return;
    const measure = this.page.measures[this.field.measure];
    const unit = measure.word ? "" : shown.unit(measure);
    setText(this.unit, unit ? `(${shown.say(`unit.${unit}`)})` : "");
  }

  /**
   * Shows or hides the lowest and highest input; a usual range always shows them.
   *
   * @param {boolean} spread
   */
  setSpread(spread) {
    this.spread = spread;
    this.root.classList.toggle("pw-spread", this.isSpread);
  }

  get isSpread() {
    return this.inputs.length > 1 && (this.spread || this.usualIsRange);
  }

  /** What is written, without ends that are left empty or not asked for. */
  get texts() {
    const used = this.isSpread ? [...this.inputs] : [this.inputs[this.inputs.length > 1 ? 1 : 0]];
    const texts = used.map((input) => input.value.trim());
    if (!this.isSpread) return texts;
    const [low, likely, high] = texts;
    if (low === "" && high === "") return [likely];
    if (likely === "") return [low, high].filter((text) => text !== "");
    return [low || likely, likely, high || likely];
  }

  get isEmpty() {
    return this.texts.every((text) => text === "");
  }

  /**
   * The value, or undefined when the field is empty or wrong; wrong input says why beside it.
   *
   * @param {Shown} shown
   * @returns {Value | undefined}
   */
  read(shown) {
    this.showTrouble("");
    if (this.isEmpty) return undefined;
    try {
      return readField(this.page, shown, this.name, this.texts);
    } catch (error) {
      if (!(error instanceof BlockError)) throw error;
      this.showTrouble(shown.say(`problem.${error.problem}`, error.facts));
      return undefined;
    }
  }

  /** @param {string} text */
  showTrouble(text) {
    setText(this.trouble, text);
    this.trouble.hidden = text === "";
    for (const input of this.inputs) input.setAttribute("aria-invalid", String(text !== ""));
  }

  /**
   * The same amount in other units, as far as it can be read.
   *
   * @param {Shown} before
   * @param {Shown} after
   */
  convert(before, after) {
    const value = this.read(before);
    this.setUnit(after);
    if (value instanceof Range && this.factorsDiffer(before, after)) this.write(after, value.three);
    else this.read(after);
  }

  /**
   * @param {Shown} before
   * @param {Shown} after
   */
  factorsDiffer(before, after) {
    const measure = this.page.measures[this.field.measure];
    return !before.factor(measure).equals(after.factor(measure));
  }
}
