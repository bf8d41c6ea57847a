/** A tolerance interval with its edges; null or an infinite number where there is no limit on that side. */
export interface Tolerance {
  lower?: number | null;
  upper?: number | null;
}

/** The limits as numbers, minus and plus infinity where there is none. RangeError for NaN or lower > upper. */
export function toleranceLimits({ lower, upper }: Tolerance): { lower: number; upper: number } {
  const limits = { lower: lower ?? -Infinity, upper: upper ?? Infinity };
  if (Number.isNaN(limits.lower) || Number.isNaN(limits.upper)) {
    throw new RangeError('A tolerance limit must be a number, or null where there is none.');
  }
  if (limits.lower > limits.upper) {
    throw new RangeError(`The lower tolerance limit ${limits.lower} lies above the upper, ${limits.upper}.`);
  }
  return limits;
}
