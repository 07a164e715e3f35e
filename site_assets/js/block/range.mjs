/** Ranges of exact numbers, as in the handbook's own sums: what goes in as a range comes out as one. */

import { Fraction, ONE, ZERO } from "./fraction.mjs";

/** A sum that cannot be done; the words for `problem` stand in the page. */
export class BlockError extends Error {
  /**
   * @param {string} problem
   * @param {string} [field]
   * @param {Record<string, string>} [facts]
   */
  constructor(problem, field = "", facts = {}) {
    super(problem);
    this.problem = problem;
    this.field = field;
    this.facts = facts;
  }
}

const TEN = Fraction.of(10);

export class Range {
  /**
   * @param {Fraction} low
   * @param {Fraction} likely
   * @param {Fraction} high
   * @param {number | null} [digits]  significant digits; null for what is counted
   */
  constructor(low, likely, high, digits = null) {
    if (likely.below(low) || high.below(likely)) throw new BlockError("turned-round");
    this.low = low;
    this.likely = likely;
    this.high = high;
    this.digits = digits;
  }

  /** @param {Range | Fraction | number | string} value */
  static of(value) {
    if (value instanceof Range) return value;
    const exact = Fraction.of(value);
    return new Range(exact, exact, exact);
  }

  /**
   * Three outcomes of which the second is the likely one.
   *
   * @param {Fraction[]} values
   * @param {number | null} digits
   */
  static spread([one, likely, other], digits) {
    const low = one.smaller(likely).smaller(other);
    return new Range(low, likely, one.larger(likely).larger(other), digits);
  }

  /** @param {Range | Fraction | number | string} other */
  plus(other) {
    const that = Range.of(other);
    return this.with(that, that.low, that.high, (a, b) => a.plus(b));
  }

  /** @param {Range | Fraction | number | string} other */
  times(other) {
    const that = Range.of(other);
    return this.with(that, that.low, that.high, (a, b) => a.times(b));
  }

  /** @param {Range | Fraction | number | string} other */
  minus(other) {
    const that = Range.of(other);
    return this.with(that, that.high, that.low, (a, b) => a.minus(b));
  }

  /** @param {Range | Fraction | number | string} other */
  over(other) {
    const that = Range.of(other);
    if (that.low.sign <= 0) throw new BlockError("divided-by-nothing");
    return this.with(that, that.high, that.low, (a, b) => a.over(b));
  }

  /**
   * @param {Range} that
   * @param {Fraction} forLow
   * @param {Fraction} forHigh
   * @param {(a: Fraction, b: Fraction) => Fraction} by
   */
  with(that, forLow, forHigh, by) {
    return new Range(
      by(this.low, forLow),
      by(this.likely, that.likely),
      by(this.high, forHigh),
      fewerDigits(this.digits, that.digits),
    );
  }

  /**
   * What a rule that never falls makes of each of the three values.
   *
   * @param {(value: Fraction) => Fraction} rule
   */
  each(rule) {
    return new Range(rule(this.low), rule(this.likely), rule(this.high), this.digits);
  }

  /** @param {Fraction} least */
  atLeast(least) {
    return this.each((value) => value.larger(least));
  }

  /** @param {Fraction} most */
  atMost(most) {
    return this.each((value) => value.smaller(most));
  }

  counted() {
    return new Range(this.low, this.likely, this.high);
  }

  get isOne() {
    return this.low.equals(this.high);
  }

  get three() {
    return [this.low, this.likely, this.high];
  }
}

/**
 * @param {number | null} one
 * @param {number | null} other
 */
export function fewerDigits(one, other) {
  if (one === null || other === null) return one === null ? other : one;
  return Math.min(one, other);
}

/**
 * @param {number} power
 * @returns {Fraction}
 */
function tens(power) {
  return power < 0 ? ONE.over(tens(-power)) : new Fraction(10n ** BigInt(power));
}

/**
 * A value rounded to so many significant digits; exactly half goes up.
 *
 * @param {Fraction} value
 * @param {number} digits
 * @returns {Fraction}
 */
export function significant(value, digits) {
  if (value.sign === 0) return value;
  if (value.sign < 0) return ZERO.minus(significant(ZERO.minus(value), digits));
  const step = tens(exponent(value) - digits + 1);
  return value.over(step).nearest().times(step);
}

/**
 * The power of ten of the first digit: 0 for 6.4, 1 for 12, -2 for 0.05; 0 for nought.
 *
 * @param {Fraction} value  not below nought
 */
export function exponent(value) {
  let power = 0;
  let size = value;
  for (; !size.below(TEN); size = size.over(TEN)) power += 1;
  for (; size.sign > 0 && size.below(ONE); size = size.times(TEN)) power -= 1;
  return power;
}

/**
 * A value as it may be shown: whole where it is counted, else to the digits that it deserves.
 *
 * @param {Fraction} value
 * @param {number | null} digits
 * @param {boolean} whole
 */
export function rounded(value, digits, whole) {
  if (!whole) return significant(value, Math.min(Math.max(digits ?? 4, 2), 4));
  const nearest = value.nearest();
  return digits === null ? nearest : significant(nearest, Math.max(digits, 3));
}
