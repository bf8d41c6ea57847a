import { median } from 'simple-statistics';
import { requireNotNegative, requirePositive } from '@/lib/stats/arguments';
import { chiSquareCdf, chiSquareUpperQuantile } from '@/lib/stats/distributions';

/** Limit factor η and adjustment factor ξ of Algorithm S. */
export interface LimitFactors {
  eta: number;
  xi: number;
}

export interface RobustSd extends LimitFactors {
  /** Robust pooled standard deviation (or range, if ranges were given); null where not usable. */
  sd: number | null;
  iterations: number;
  /** How many values lie beyond η sd and were pulled in. */
  pulled: number;
  why: string | null;
}

/** η and ξ for 1 to 10 df as the standard prints them (from memory; the last digit of ξ at 6 and 10 is the table's). */
const TABLE: readonly LimitFactors[] = [
  { eta: 1.645, xi: 1.097 },
  { eta: 1.517, xi: 1.054 },
  { eta: 1.444, xi: 1.039 },
  { eta: 1.395, xi: 1.032 },
  { eta: 1.359, xi: 1.027 },
  { eta: 1.332, xi: 1.024 },
  { eta: 1.31, xi: 1.021 },
  { eta: 1.292, xi: 1.019 },
  { eta: 1.277, xi: 1.018 },
  { eta: 1.264, xi: 1.017 },
];

/**
 * η = √(χ²(0.9; df)/df), ξ = 1/√(P(χ²(df + 2) ≤ df η²) + 0.1 η²); with `table`, the standard's rounded values
 * for whole df from 1 to 10. RangeError where those do not exist. Source: ISO 5725-5:1998, 5.3 and table 8.
 */
export function limitFactors(df: number, constants: 'formula' | 'table' = 'formula'): LimitFactors {
  requirePositive('The degrees of freedom of a standard deviation', df);
  if (constants === 'table') {
    const row = Number.isInteger(df) ? TABLE[df - 1] : undefined;
    if (!row) throw new RangeError(`The table has 1 to 10 degrees of freedom, not ${df}.`);
    return row;
  }
  const square = chiSquareUpperQuantile(0.1, df) / df;
  return { eta: Math.sqrt(square), xi: 1 / Math.sqrt(chiSquareCdf(df * square, df + 2) + 0.1 * square) };
}

/**
 * Algorithm S: standard deviations of `df` degrees of freedom each, pooled so that a wild one hardly counts.
 *
 * Starts at their median and repeats w* = ξ √(mean of min(w, η w*)²) until nothing changes.
 * RangeError for a negative sd or df not above zero. Source: ISO 13528:2015, C.4; ISO 5725-5:1998, 5.3.
 */
export function algorithmS(
  sds: readonly number[],
  df: number,
  options: { constants?: 'formula' | 'table' } = {},
): RobustSd {
  sds.forEach((sd) => requireNotNegative('A standard deviation', sd));
  const factors = limitFactors(df, options.constants);
  const { eta, xi } = factors;
  const unusable = { ...factors, sd: null, iterations: 0, pulled: 0 };
  if (sds.length === 0) return { ...unusable, why: 'There are no standard deviations.' };
  let sd = median([...sds]);
  if (sd === 0) {
    return {
      ...unusable,
      why: 'At least half of the standard deviations are zero: this is no measure of scatter.',
    };
  }
  let iterations = 0;
  for (let settled = false; !settled && iterations < 20_000; iterations++) {
    const limit = eta * sd;
    const next = xi * Math.sqrt(sds.reduce((sum, each) => sum + Math.min(each, limit) ** 2, 0) / sds.length);
    settled = Math.abs(next - sd) <= 1e-15 * next;
    sd = next;
  }
  return { ...factors, sd, iterations, pulled: sds.filter((each) => each > eta * sd).length, why: null };
}
