import { requireNotNegative } from '@/lib/stats/arguments';
import { findRoot } from '@/lib/stats/numeric/root';
import { averageRunLength, type ChartDesign } from './average-run-length';

/**
 * The L of an EWMA chart whose average run length without any shift is `runLength` (above 1).
 * RangeError where λ is not in 0 … 1 or the run length is not above 1. Source: as `averageRunLength`.
 */
export function ewmaLimitFor(lambda: number, runLength: number): number {
  requireRunLength(runLength);
  return limitFor(runLength, (L) => ({ chart: 'ewma', lambda, L }));
}

/**
 * The h of a two-sided CUSUM with allowance k whose average run length without any shift is `runLength`.
 * RangeError where k is negative or alone gives a longer run length: then h would be below zero.
 * Source: as `averageRunLength`.
 */
export function cusumLimitFor(k: number, runLength: number): number {
  requireNotNegative('The allowance k of a CUSUM', k);
  requireRunLength(runLength);
  const shortest = averageRunLength({ chart: 'individuals', L: k === 0 ? Number.MIN_VALUE : k });
  if (shortest >= runLength) {
    throw new RangeError(
      `With k = ${k} the run length is at least ${shortest.toPrecision(3)}; ${runLength} cannot be had.`,
    );
  }
  return limitFor(runLength, (h) => ({ chart: 'cusum', k, h }));
}

function limitFor(runLength: number, design: (limit: number) => ChartDesign): number {
  const excess = (limit: number) => Math.log(averageRunLength(design(limit)) / runLength);
  let low = 1e-9;
  let high = 1;
  while (excess(high) < 0) [low, high] = [high, high * 1.5];
  return findRoot(excess, low, high);
}

function requireRunLength(runLength: number): void {
  if (!(runLength > 1 && runLength <= 1e12)) {
    throw new RangeError(`A run length must be above 1 and at most 1e12; it is ${runLength}.`);
  }
}
