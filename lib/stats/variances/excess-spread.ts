import { addWeighted, NO_WEIGHT } from '@/lib/stats/collapse';
import { varianceRoot, type VarianceGroup } from './variance-root';

/**
 * By how many times the variances of groups spread more than those of normal values with one scatter would; 1 at least.
 * Values with long tails have such variances: as evidence of a scatter, their degrees of freedom are to be divided by it.
 * @param cuts places before which the scatter may have changed: what lies between two of them is compared by itself.
 * @returns 1 too where too few groups have degrees of freedom to tell.
 * Source: Box (1953), Biometrika 40, 318–335, and Shoemaker (2003), Amer. Statist. 57, 105–114, for degrees of freedom that
 * long tails take away; here the tails are told from the spread of the groups' own variances, on the scale of
 * `varianceRoot`.
 */
export function excessSpread(groups: readonly VarianceGroup[], cuts: readonly number[] = []): number {
  const ends = [...cuts, groups.length];
  let squares = 0;
  let df = 0;
  ends.forEach((end, i) => {
    const roots = groups.slice(ends[i - 1] ?? 0, end).flatMap((group) => varianceRoot(group) ?? []);
    const { mean, ss } = roots.reduce(
      (sum, { root, weight }) => addWeighted(sum, { value: root, weight }),
      NO_WEIGHT,
    );
    if (!(mean > 0)) return;
    squares += ss / mean ** 2;
    df += roots.length - 1;
  });
  return df > 0 ? Math.max(1, squares / df) : 1;
}
