/**
 * The checks that every statistic makes on what it is given. Each throws a RangeError whose sentence
 * names the argument; none changes a value.
 */

/** A finite number. */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number; it is ${value}.`);
}

/** Every value a finite number; the first that is not is named by its place, counted from 1. */
export function requireAllFinite(name: string, values: readonly number[]): void {
  const bad = values.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0) {
    throw new RangeError(`${name} must be finite numbers; number ${bad + 1} is ${String(values[bad])}.`);
  }
}

/** A finite number above zero. */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) throw new RangeError(`${name} must be above zero; it is ${value}.`);
}

/** A finite number of at least zero. */
export function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) {
    throw new RangeError(`${name} must be zero or more; it is ${value}.`);
  }
}

/** A whole number from `least` upwards. */
export function requireWhole(name: string, value: number, least = 0): void {
  if (!Number.isSafeInteger(value) || value < least) {
    throw new RangeError(`${name} must be a whole number of at least ${least}; it is ${value}.`);
  }
}

/** A probability, both ends allowed. */
export function requireProbability(name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must lie between 0 and 1; it is ${value}.`);
}

/** A level of confidence or significance: strictly between 0 and 1. */
export function requireLevel(name: string, value: number): void {
  if (!(value > 0 && value < 1)) {
    throw new RangeError(`${name} must lie between 0 and 1, both ends excluded; it is ${value}.`);
  }
}

/** Two lists of one length. */
export function requireEqualLengths(
  name: string,
  values: readonly unknown[],
  otherName: string,
  others: readonly unknown[],
): void {
  if (values.length !== others.length) {
    throw new RangeError(
      `${name} and ${otherName} must have the same length; they have ${values.length} and ${others.length}.`,
    );
  }
}
