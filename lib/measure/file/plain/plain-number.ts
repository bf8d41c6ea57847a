const POINT = 46;
const COMMA = 44;
const MINUS = 45;
/** All digits are then exact in a double, and so is the power of ten: the quotient is the nearest double. */
const MOST_DIGITS = 15;
const TENS = Array.from({ length: MOST_DIGITS + 1 }, (_, digits) => 10 ** digits);

/**
 * The number that stands among `bytes` from `from` to `to`, as `Number` would read it: digits with a point, or with a comma
 * where that is one. NaN for whatever is written otherwise, may be read in two ways, or is no number.
 */
export function plainNumber(bytes: Uint8Array, from: number, to: number, decimalComma: boolean): number {
  let at = from;
  const negative = bytes[at] === MINUS;
  if (negative) at++;
  const first = at;
  let digits = 0;
  let after = -1;
  for (; at < to; at++) {
    const code = bytes[at] ?? 0;
    if (code >= 48 && code <= 57) {
      digits = digits * 10 + (code - 48);
    } else if (after < 0 && (code === POINT || (decimalComma && code === COMMA))) {
      if (at === first) return Number.NaN;
      // `1.310` beside decimal commas is for the reader that watches them.
      if (decimalComma && code === POINT && to - at === 4) return Number.NaN;
      after = at + 1;
    } else return Number.NaN;
  }
  const decimals = after < 0 ? 0 : to - after;
  const written = to - first - (after < 0 ? 0 : 1);
  if (written === 0 || written > MOST_DIGITS || after === to) return Number.NaN;
  const value = decimals === 0 ? digits : digits / (TENS[decimals] ?? Number.NaN);
  return negative ? 0 - value : value;
}

/** A whole number of at most four digits; −1 for anything else. */
export function plainCount(bytes: Uint8Array, from: number, to: number): number {
  if (to === from || to - from > 4) return -1;
  let number = 0;
  for (let at = from; at < to; at++) {
    const code = (bytes[at] ?? 0) - 48;
    if (code < 0 || code > 9) return -1;
    number = number * 10 + code;
  }
  return number;
}
