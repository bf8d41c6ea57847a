import { splitSum, type Collapsed } from './collapse';

/**
 * Two groups of readings, each collapsed, as one: equal to collapsing their union to 1e-12.
 *
 * The square of the distance of the two means enters the sum of squares, so the means carry their low-order part
 * (`rest`; taken as 0 where it was not kept). Without it, means near 1e6 of readings 0.1 apart would cost the sum
 * of squares half its digits.
 * Source: Chan, Golub & LeVeque (1983), The American Statistician 37, 242–247, formula (2.1).
 */
export function mergeCollapsed(a: CollapsedInput, b: CollapsedInput): Collapsed {
  if (a.n === 0) return { n: b.n, mean: b.mean, rest: b.rest ?? 0, ss: b.ss };
  if (b.n === 0) return { n: a.n, mean: a.mean, rest: a.rest ?? 0, ss: a.ss };
  const n = a.n + b.n;
  const apart = b.mean - a.mean + ((b.rest ?? 0) - (a.rest ?? 0));
  return {
    n,
    ...splitSum(a.mean, (apart * b.n) / n, a.rest ?? 0),
    ss: a.ss + b.ss + (apart * apart * a.n * b.n) / n,
  };
}

/** A collapsed group as it may come from a store, without the low-order part of its mean. */
export type CollapsedInput = Omit<Collapsed, 'rest'> & { rest?: number };
