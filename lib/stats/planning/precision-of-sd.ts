import { requireLevel, requirePositive, requireWhole } from '@/lib/stats/arguments';
import { chiSquareCdf, chiSquareQuantile } from '@/lib/stats/distributions';

export interface SdPlan {
  /** Degrees of freedom needed. */
  df: number;
  /** Readings needed in all: df + 1 in one setup, or setups × readings a setup. */
  n: number;
  /** Setups needed where the readings come a few a setup, otherwise 1. */
  setups: number;
  /** Upper limit / sd with that many, and with one degree of freedom fewer (null at df = 1). */
  factor: number;
  factorWithOneFewer: number | null;
}

/** Upper limit of the chi-square interval of an sd, as a multiple of the sd: √(df/χ²(a/2; df)), a = 1 − level. */
export function sdUpperFactor(df: number, level = 0.95): number {
  requirePositive('The degrees of freedom', df);
  requireLevel('The level of an interval', level);
  return Math.sqrt(df / chiSquareQuantile((1 - level) / 2, df));
}

/**
 * Chance that the upper limit found from `df` degrees of freedom lies below `ratio` times the *true* sd:
 * P(χ²(df) < df ratio²/factor²).
 */
export function chanceUpperLimitBelow(ratio: number, df: number, level = 0.95): number {
  requirePositive('The ratio', ratio);
  return chiSquareCdf(df * (ratio / sdUpperFactor(df, level)) ** 2, df);
}

/** See `readingsNeeded`. The factor falls with df, so the smallest df is found by halving. */
export function precisionOfSd(question: {
  ratio: number;
  level?: number;
  readingsPerSetup?: number;
}): SdPlan {
  const { ratio, level = 0.95, readingsPerSetup } = question;
  if (!(ratio > 1.001 && ratio < Infinity)) {
    throw new RangeError(
      `The ratio of upper limit to standard deviation must be above 1.001; it is ${ratio}.`,
    );
  }
  requireLevel('The level of an interval', level);
  if (readingsPerSetup !== undefined) requireWhole('The number of readings a setup', readingsPerSetup, 2);
  let enough = 1;
  while (sdUpperFactor(enough, level) >= ratio) enough *= 2;
  let short = Math.floor(enough / 2);
  while (enough - short > 1) {
    const middle = Math.floor((short + enough) / 2);
    if (sdUpperFactor(middle, level) < ratio) enough = middle;
    else short = middle;
  }
  const setups = readingsPerSetup === undefined ? 1 : Math.ceil(enough / (readingsPerSetup - 1));
  return {
    df: enough,
    n: readingsPerSetup === undefined ? enough + 1 : setups * readingsPerSetup,
    setups,
    factor: sdUpperFactor(enough, level),
    factorWithOneFewer: enough > 1 ? sdUpperFactor(enough - 1, level) : null,
  };
}
