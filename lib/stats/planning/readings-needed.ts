import { requireLevel, requirePositive } from '@/lib/stats/arguments';
import { findRoot } from '@/lib/stats/numeric/root';
import { precisionOfSd, type SdPlan } from './precision-of-sd';
import { tTestPower, type TTestDesign } from './t-test-power';

export interface MeanQuestion {
  /** `bias`: one technician against a known value. `difference`: two technicians against each other. */
  question: 'bias' | 'difference';
  /** The true bias or difference that should be noticed, in the unit of `sd`. */
  difference: number;
  /** Scatter of one reading. */
  sd: number;
  /** Chance of noticing it. Default 0.8. */
  power?: number;
  /** Level of confidence of the two-sided test. Default 0.95. */
  level?: number;
  /** Count 'significant on the wrong side' as noticed. Default false. */
  strict?: boolean;
}

export interface RepeatabilityQuestion {
  question: 'repeatability';
  /** The upper limit of the sd should stay below this multiple of the sd found; above 1. */
  ratio: number;
  /** Level of the two-sided interval. Default 0.95. */
  level?: number;
  /** Readings in each setup, at least 2; absent: all readings in one setup. */
  readingsPerSetup?: number;
}

export interface MeanPlan {
  /** Readings needed, of each technician where two are compared; at least 2. */
  n: number;
  /** The same before rounding up: the real n at which the power is just reached, at least 2. */
  exact: number;
  /** Power with n readings, and with one fewer (null at n = 2). */
  power: number;
  powerWithOneFewer: number | null;
}

/**
 * How many readings a question needs.
 *
 * - `bias`, `difference`: the smallest n for which the two-sided t test notices the difference with the
 *   power asked for. Source: Cohen (1988), Statistical Power Analysis, chapter 2; checked against R `power.t.test`.
 * - `repeatability`: the smallest degrees of freedom for which the chi-square interval of an sd ends below
 *   `ratio` times the sd. Source: NIST/SEMATECH e-Handbook, 7.2.3.
 *
 * RangeError for a difference or sd not above zero, a ratio not above 1, or levels outside 0 … 1.
 */
export function readingsNeeded(question: MeanQuestion): MeanPlan;
export function readingsNeeded(question: RepeatabilityQuestion): SdPlan;
export function readingsNeeded(question: MeanQuestion | RepeatabilityQuestion): MeanPlan | SdPlan;
export function readingsNeeded(question: MeanQuestion | RepeatabilityQuestion): MeanPlan | SdPlan {
  if (question.question === 'repeatability') return precisionOfSd(question);
  const { difference, sd, power = 0.8, level = 0.95, strict = false } = question;
  requirePositive('The difference to be noticed', difference);
  requirePositive('The standard deviation of a reading', sd);
  requireLevel('The power', power);
  requireLevel('The level of confidence', level);
  const samples = question.question === 'bias' ? 1 : 2;
  const design: TTestDesign = { effect: difference / sd, samples, alpha: 1 - level, strict };
  return planMean(design, power);
}

function planMean(design: TTestDesign, wanted: number): MeanPlan {
  const at = (n: number) => tTestPower(n, design);
  let low = 2;
  let high = 2;
  while (at(high) < wanted) [low, high] = [high, high * 2];
  const exact = high === 2 ? 2 : findRoot((n) => at(n) - wanted, low, high);
  // A power that is reached exactly at a whole n must not be rounded up past it.
  const n = Math.max(2, Math.ceil(exact - 1e-9));
  return { n, exact, power: at(n), powerWithOneFewer: n > 2 ? at(n - 1) : null };
}
