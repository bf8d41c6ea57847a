import { betaBinomial, binomialInterval } from '@/lib/stats';
import type { Rate } from '../types';

/** A rate of units side by side, each also drawn towards the rate of all of them. */
export interface ShrunkRate extends Rate {
  /** Beta-binomial; null where the units cannot say how alike they are. */
  shrunk: number | null;
}

/** The proportion of right outcomes with its 95 % Wilson interval. */
export function rateOf(outcomes: readonly { right: boolean }[], none = NO_JOB): Rate {
  const jobs = outcomes.length;
  const right = outcomes.filter((outcome) => outcome.right).length;
  if (jobs === 0) return { jobs, right, rate: null, low: null, high: null, why: none };
  const { low, high } = binomialInterval(right, jobs, { method: 'wilson', level: 0.95 });
  return { jobs, right, rate: right / jobs, low, high, why: null };
}

export const NO_JOB = 'No job has a first measuring after the repair.';

/** The rates of groups of outcomes, in the order of their names. */
export function rateByName(
  groups: ReadonlyMap<string, readonly { right: boolean }[]>,
  none = NO_JOB,
): Map<string, ShrunkRate> {
  const names = [...groups.keys()].sort();
  const rates = names.map((name) => rateOf(groups.get(name) ?? [], none));
  const { units } = betaBinomial(rates.map(({ right, jobs }) => ({ x: right, n: jobs })));
  return new Map(
    names.flatMap((name, i) => {
      const rate = rates[i];
      return rate === undefined ? [] : [[name, { ...rate, shrunk: units[i]?.mean ?? null }] as const];
    }),
  );
}
