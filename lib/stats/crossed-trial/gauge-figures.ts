import type { Categories, Variances } from './types';

/** 6 gauge sd over the width of the tolerance, which is twice its half width. */
export function shareOfTolerance(variances: Variances | null, tolerance: number | undefined): number | null {
  if (variances === null || tolerance === undefined || variances.gauge === null) return null;
  return (6 * Math.sqrt(Math.max(0, variances.gauge))) / (2 * tolerance);
}

/**
 * How many groups of parts the gauge can tell apart: √2 × part sd / gauge sd.
 *
 * The count takes 1.41 for √2, as is customary, and is at least 1. Null where the gauge shows no scatter at all.
 */
export function distinctCategories(variances: Variances | null): Categories | null {
  if (variances === null) return null;
  const { part, gauge } = variances;
  if (part === null || gauge === null || !(gauge > 0)) return { raw: null, count: null };
  const ratio = Math.sqrt(Math.max(0, part) / gauge);
  return { raw: Math.SQRT2 * ratio, count: Math.max(1, Math.floor(1.41 * ratio)) };
}

/** The sums of four components; a component that cannot be had counts as part of the repeats. */
export function withSums(
  lines: Pick<Variances, 'part' | 'operator' | 'part:operator' | 'repeat'>,
): Variances {
  const { part, operator, repeat } = lines;
  const reproducibility = operator === null ? null : operator + (lines['part:operator'] ?? 0);
  const gauge = reproducibility === null || repeat === null ? null : reproducibility + repeat;
  return { ...lines, reproducibility, gauge, total: gauge === null || part === null ? null : gauge + part };
}
