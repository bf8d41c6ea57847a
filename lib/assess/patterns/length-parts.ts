import type { Change } from './changes';
import type { Part } from './mixture';

/** A linear contrast of lengths: weights by place in the list. */
export type LengthContrast = readonly number[];

/** Beyond so many combinations of components the lengths are taken as normal, by mean and variance. */
const MOST = 300;

/** The posterior of some contrasts of lengths: the lengths are independent given their readings. */
export function lengthParts(changes: readonly Change[], contrasts: readonly LengthContrast[]): Part[] {
  const combinations = changes.reduce((product, { components }) => product * components.length, 1);
  const lists = changes.map(({ components }) => (combinations > MOST ? [asOne(components)] : components));
  let parts: { weight: number; means: number[]; variances: number[] }[] = [
    { weight: 1, means: [], variances: [] },
  ];
  for (const components of lists)
    parts = parts.flatMap(({ weight, means, variances }) =>
      components.map((one) => ({
        weight: weight * one.weight,
        means: [...means, one.mean],
        variances: [...variances, one.variance],
      })),
    );
  const n = contrasts.length;
  return parts.map(({ weight, means, variances }) => ({
    weight,
    mean: Float64Array.from(contrasts, (row) => dot(row, means)),
    covariance: Float64Array.from({ length: n * n }, (_, at) => {
      const [row, other] = [contrasts[Math.floor(at / n)] ?? [], contrasts[at % n] ?? []];
      return variances.reduce((sum, variance, i) => sum + (row[i] ?? 0) * (other[i] ?? 0) * variance, 0);
    }),
  }));
}

/** A mixture as one component with its mean and variance. */
export function asOne(components: Change['components']): Change['components'][number] {
  const mean = components.reduce((sum, one) => sum + one.weight * one.mean, 0);
  const variance = components.reduce(
    (sum, one) => sum + one.weight * (one.variance + (one.mean - mean) ** 2),
    0,
  );
  return { weight: 1, mean, variance };
}

const dot = (row: readonly number[], values: readonly number[]): number =>
  values.reduce((sum, value, i) => sum + (row[i] ?? 0) * value, 0);
