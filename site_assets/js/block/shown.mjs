/** Reads the numbers of a form and writes those of an answer, in the reader's units and language. */

import { Fraction, ZERO } from "./fraction.mjs";
import { NUMBER_MARKS } from "../languages.mjs";
import { BlockError, Range, exponent, fewerDigits, rounded } from "./range.mjs";

/** @import {Fact, Figure, PageMeasure, Sentence, BlockPage} from "./types.mjs" */

const NUMBER = /^[0-9]{1,9}(?:[.,][0-9]{1,6})?$/;
const PLACEHOLDER = /\{(\w+)\}/g;

/**
 * Significant digits of a number as somebody wrote it; nothing at all is exact.
 *
 * @param {string} text
 */
function digitsOf(text) {
  return text.replace(/[.,]/g, "").replace(/^0+/, "").length || null;
}

/**
 * Digits behind the decimal sign that all numbers of a range get: 4.0 to 6.4, yet 9.5 to 12.
 * Numbers of unlike size were rounded at unlike places, and a nought would claim too much.
 *
 * @param {Fraction[]} values  not below nought
 */
function placesOf(values) {
  if (new Set(values.map(exponent)).size > 1) return 0;
  const places = values.map((value) => {
    let [rest, count] = [value.minus(value.floor()), 0];
    for (; rest.sign > 0; count += 1) {
      rest = rest.times(Fraction.of(10));
      rest = rest.minus(rest.floor());
    }
    return count;
  });
  return Math.max(...places);
}

/**
 * What stands in "(most likely 35)" is one piece: it goes to a line of its own as a whole.
 *
 * @param {string} text
 */
export const onOneLine = (text) => text.replace(/ (?=[^()]{0,24}\d\))/g, "\u00a0");

export class Shown {
  /**
   * @param {BlockPage} page
   * @param {"metric" | "us"} units
   */
  constructor(page, units) {
    this.page = page;
    this.units = units;
  }

  /**
   * The sentence for a key, filled in. A missing text shows its key, so that it is seen.
   *
   * @param {string} key
   * @param {Record<string, string>} [facts]
   */
  say(key, facts = {}) {
    const text = this.page.strings[key];
    if (text === undefined) return key;
    return text.replace(PLACEHOLDER, (whole, name) => facts[name] ?? whole);
  }

  /**
   * What a number of an answer is, told from those of other questions.
   *
   * @param {Figure} figure
   * @param {string} question
   */
  label({ name, years }, question) {
    const key = this.fitting(`figure.${name}`, question);
    if (years === undefined) return this.say(key);
    return this.say(years === 1 ? `${key}.years.one` : `${key}.years`, { years: `${years}` });
  }

  /**
   * The key under which a sentence is written for something of its own, else the usual key.
   *
   * @param {string} key
   * @param {string} own
   */
  fitting(key, own) {
    const special = `${key}.${own}`;
    return special in this.page.strings ? special : key;
  }

  /**
   * What a field asks, in the reader's units.
   *
   * @param {string} name
   */
  asked(name) {
    return this.say(this.fitting(`field.${name}`, this.units));
  }

  /** @param {PageMeasure} measure */
  unit(measure) {
    return this.units === "us" ? measure.us : measure.metric;
  }

  /** @param {PageMeasure} measure */
  factor(measure) {
    return Fraction.of(this.page.units[measure.kind][this.unit(measure)]);
  }

  /** @param {string} text */
  number(text) {
    const plain = text.trim();
    if (plain === "") throw new BlockError("missing");
    if (!NUMBER.test(plain)) throw new BlockError("not-a-number", "", { found: plain });
    return Fraction.of(plain.replace(",", "."));
  }

  /**
   * One number, or lowest, most likely and highest, in the units that the form shows.
   *
   * @param {string[]} texts
   * @param {string} name  of the measure
   */
  range(texts, name) {
    const measure = this.page.measures[name];
    const factor = this.factor(measure);
    const values = texts.map((text) => this.number(text).times(factor));
    const exact = measure.whole || measure.exact;
    const digits = exact ? null : texts.map((text) => digitsOf(text.trim())).reduce(fewerDigits, null);
    const [low, high] = [values[0], values[values.length - 1]];
    const likely = values.length === 3 ? values[1] : low.plus(high).over(Fraction.of(2));
    return new Range(low, likely, high, digits);
  }

  /**
   * An already rounded number in the language's own writing.
   *
   * @param {Fraction} value
   * @param {boolean} [grouped]  thousands apart; not for a field, where a comma is a point
   * @param {number} [leastPlaces]  digits that stand behind the decimal sign at least
   */
  decimal(value, grouped = true, leastPlaces = 0) {
    const marks = NUMBER_MARKS[this.page.language] ?? NUMBER_MARKS.en;
    const size = value.sign < 0 ? ZERO.minus(value) : value;
    let text = size.floor().top.toString();
    if (grouped && text.length > 4) text = text.replace(/\B(?=(?:\d{3})+$)/g, marks.thousands);
    let rest = size.minus(size.floor());
    if (rest.sign > 0 || leastPlaces > 0) text += marks.decimal;
    for (let place = 0; rest.sign > 0 || place < leastPlaces; place += 1) {
      rest = rest.times(Fraction.of(10));
      text += rest.floor().top.toString();
      rest = rest.minus(rest.floor());
    }
    return value.sign < 0 ? `-${text}` : text;
  }

  /**
   * @param {Fraction} value
   * @param {string} name
   * @param {number | null} [digits]
   */
  one(value, name, digits = null) {
    const measure = this.page.measures[name];
    const number = rounded(value.over(this.factor(measure)), digits, measure.whole);
    return this.withUnit(this.decimal(number), measure, number.equals(Fraction.of(1)));
  }

  /**
   * A range with its unit: one number where its ends show alike. A count that is rounded to fewer
   * digits than it has is told as about so many.
   *
   * @param {Range} value
   * @param {string} name
   */
  text(value, name) {
    const measure = this.page.measures[name];
    const factor = this.factor(measure);
    const [low, likely, high] = value.three.map((one) =>
      rounded(one.over(factor), value.digits, measure.whole),
    );
    if (low.equals(high)) {
      const number = this.withUnit(this.decimal(likely), measure, likely.equals(Fraction.of(1)));
      const isOff = measure.whole && !likely.equals(value.likely.over(factor).nearest());
      return isOff ? this.say("about", { number }) : number;
    }
    const places = placesOf([low, likely, high]);
    const [first, middle, last] = [low, likely, high].map((one) => this.decimal(one, true, places));
    const range = this.withUnit(this.say("range", { low: first, high: last }), measure, false);
    return this.say("likely", { range, likely: middle });
  }

  /**
   * @param {string} number
   * @param {PageMeasure} measure
   * @param {boolean} isOne
   */
  withUnit(number, measure, isOne) {
    const unit = this.unit(measure);
    if (unit === "%") return number + (NUMBER_MARKS[this.page.language] ?? NUMBER_MARKS.en).percent;
    if (measure.word) return `${number} ${this.say(`word.${measure.word}.${isOne ? "one" : "many"}`)}`.trim();
    return unit ? `${number} ${this.say(`unit.${unit}`)}` : number;
  }

  /** @param {Figure} figure */
  figure({ value, measure }) {
    return this.text(value, measure);
  }

  /**
   * A step or a remark. Steps follow the likely values with all their digits, so that whoever
   * works along on paper comes to the same result.
   *
   * @param {"step" | "remark"} part
   * @param {Sentence} sentence
   */
  sentence(part, { name, facts }) {
    /** @type {Record<string, string>} */
    const texts = {};
    for (const [key, fact] of Object.entries(facts)) texts[key] = this.fact(fact);
    return this.say(this.fitting(`${part}.${name}`, this.units), texts);
  }

  /** @param {Fact} fact */
  fact([measure, value]) {
    return this.one(Range.of(value).likely, measure);
  }
}
