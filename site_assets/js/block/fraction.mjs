/** Exact fractions, so that the browser cannot differ from the handbook in the last digit. */

/**
 * @param {bigint} a
 * @param {bigint} b
 */
function commonDivisor(a, b) {
  while (b !== 0n) [a, b] = [b, a % b];
  return a < 0n ? -a : a;
}

/**
 * @param {bigint} top
 * @param {bigint} bottom  above nothing
 */
function floorDivide(top, bottom) {
  const whole = top / bottom;
  return top < 0n && whole * bottom !== top ? whole - 1n : whole;
}

export class Fraction {
  /**
   * @param {bigint} top
   * @param {bigint} [bottom]  never nothing
   */
  constructor(top, bottom = 1n) {
    const divisor = commonDivisor(top, bottom) * (bottom < 0n ? -1n : 1n);
    this.top = top / divisor;
    this.bottom = bottom / divisor;
  }

  /**
   * Reads `3/4`, `2.5` or a whole number.
   *
   * @param {string | number | bigint | Fraction} value
   */
  static of(value) {
    if (value instanceof Fraction) return value;
    const text = String(value);
    if (text.includes("/")) {
      const [top, bottom] = text.split("/");
      return new Fraction(BigInt(top), BigInt(bottom));
    }
    const [whole, places = ""] = text.split(".");
    return new Fraction(BigInt(whole + places), 10n ** BigInt(places.length));
  }

  /** @param {Fraction} other */
  plus(other) {
    return new Fraction(this.top * other.bottom + other.top * this.bottom, this.bottom * other.bottom);
  }

  /** @param {Fraction} other */
  minus(other) {
    return new Fraction(this.top * other.bottom - other.top * this.bottom, this.bottom * other.bottom);
  }

  /** @param {Fraction} other */
  times(other) {
    return new Fraction(this.top * other.top, this.bottom * other.bottom);
  }

  /** @param {Fraction} other */
  over(other) {
    return new Fraction(this.top * other.bottom, this.bottom * other.top);
  }

  /**
   * Below nothing, nothing, or above: which of the two is larger.
   *
   * @param {Fraction} other
   */
  compare(other) {
    const difference = this.top * other.bottom - other.top * this.bottom;
    return difference < 0n ? -1 : difference > 0n ? 1 : 0;
  }

  /** @param {Fraction} other */
  equals(other) {
    return this.compare(other) === 0;
  }

  /** @param {Fraction} other */
  below(other) {
    return this.compare(other) < 0;
  }

  get sign() {
    return this.top < 0n ? -1 : this.top > 0n ? 1 : 0;
  }

  get isWhole() {
    return this.bottom === 1n;
  }

  /** The largest whole number that is not above it. */
  floor() {
    return new Fraction(floorDivide(this.top, this.bottom));
  }

  /** The smallest whole number that is not below it. */
  ceiling() {
    return new Fraction(-floorDivide(-this.top, this.bottom));
  }

  /** The nearest whole number; exactly half goes up. */
  nearest() {
    return new Fraction(floorDivide(2n * this.top + this.bottom, 2n * this.bottom));
  }

  /** @param {Fraction} other */
  larger(other) {
    return this.below(other) ? other : this;
  }

  /** @param {Fraction} other */
  smaller(other) {
    return other.below(this) ? other : this;
  }

  /** For plain whole numbers only: years, counts of groups. */
  toNumber() {
    return Number(this.top) / Number(this.bottom);
  }
}

export const ZERO = new Fraction(0n);
export const ONE = new Fraction(1n);
