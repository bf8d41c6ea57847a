import type { SdEstimate } from '../types';
import type { Hand, Share } from './types';

export interface HandShares {
  /** By reading again, by setting again, by both together, for one reading. */
  repeatability: Share;
  setting: Share;
  both: Share;
}

/**
 * What share of the tolerance a hand takes: 3 sds over its half width. The interval of both together joins those of the
 * parts by the squares of their distances (modified large sample).
 * Source: Graybill and Wang (1980), J. Amer. Statist. Assoc. 75, 869–873, for the sum of variances.
 */
export function handShares({ repeatability, setting }: Hand, tolerance: number): HandShares {
  requireTolerance(tolerance);
  const both = sumOfVariances(repeatability, setting);
  return {
    repeatability: shareOf(repeatability, tolerance),
    setting: shareOf(setting, tolerance),
    both: shareOf(both, tolerance),
  };
}

export function requireTolerance(tolerance: number): void {
  if (!(tolerance > 0 && tolerance < Infinity)) {
    throw new RangeError(`A share of the tolerance needs a tolerance above zero; it is ${tolerance} mm.`);
  }
}

/** Sd of two independent errors together. Null where either is not known. */
export function sumOfVariances(a: SdEstimate, b: SdEstimate): SdEstimate {
  if (a.sd === null || b.sd === null) {
    return { sd: null, df: null, low: null, high: null, why: a.why ?? b.why ?? 'One of both is not known.' };
  }
  const variance = a.sd ** 2 + b.sd ** 2;
  const reach = (x: number | null, y: number | null) =>
    x === null || y === null ? null : Math.hypot((a.sd ?? 0) ** 2 - x ** 2, (b.sd ?? 0) ** 2 - y ** 2);
  const [down, up] = [reach(a.low, b.low), reach(a.high, b.high)];
  return {
    sd: Math.sqrt(variance),
    df: null,
    low: down === null ? null : Math.sqrt(Math.max(0, variance - down)),
    high: up === null ? null : Math.sqrt(variance + up),
    why: null,
  };
}

function shareOf({ sd, low, high, why }: SdEstimate, tolerance: number): Share {
  const of = (value: number | null) => (value === null ? null : (3 * value) / tolerance);
  return { share: of(sd), low: of(low), high: of(high), why };
}
