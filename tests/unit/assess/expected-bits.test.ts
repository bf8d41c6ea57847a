import { describe, expect, it } from 'vitest';
import { coefficient, entropyBits, expectedBits, type Prediction } from '@/lib/assess/round/information';
import { Random } from '@/tests/simulation/random';

const normal = (weight: number, mean: number, variance = 1): Prediction => ({
  weight,
  mean: [mean],
  covariance: [variance],
});

const density = (x: number, mean: number, variance: number): number =>
  Math.exp((-0.5 * (x - mean) ** 2) / variance) / Math.sqrt(2 * Math.PI * variance);

/** Entropy of the groups less the entropy expected to be left after one reading, by a sum over an even grid. */
function integratedBits(predictions: readonly Prediction[], groups: readonly string[]): number {
  const names = [...new Set(groups)];
  const of = (name: string, value: (p: Prediction) => number): number =>
    predictions.reduce((sum, p, i) => sum + (groups[i] === name ? p.weight * value(p) : 0), 0);
  const step = 0.05;
  let left = 0;
  for (let x = -60; x <= 60; x += step) {
    const each = names.map((name) => of(name, (p) => density(x, p.mean[0] ?? NaN, p.covariance[0] ?? NaN)));
    const total = each.reduce((a, b) => a + b, 0);
    if (total > 1e-300) left += step * total * entropyBits(each.map((value) => value / total));
  }
  return entropyBits(names.map((name) => of(name, () => 1))) - left;
}

describe('expectedBits', () => {
  it('is 0 where all explanations predict the same', () => {
    expect(expectedBits([normal(0.3, 2), normal(0.7, 2)], ['gauge', 'body'])).toBeCloseTo(0, 12);
  });

  it('is 0 where only explanations of one group differ', () => {
    expect(expectedBits([normal(0.3, -8), normal(0.7, 8)], ['body', 'body'])).toBe(0);
  });

  it('is the entropy of the groups where the predictions lie far apart', () => {
    const found = expectedBits([normal(0.1, 0), normal(0.2, 60), normal(0.7, -60)], ['a', 'b', 'c']);
    expect(found).toBeCloseTo(entropyBits([0.1, 0.2, 0.7]), 9);
  });

  it('grows with the distance of the predictions', () => {
    const bits = [0, 0.5, 1, 2, 3, 4, 6, 9].map((mean) =>
      expectedBits([normal(0.4, 0), normal(0.6, mean)], ['gauge', 'body']),
    );
    bits.slice(1).forEach((value, i) => expect(value).toBeGreaterThan(bits[i] ?? NaN));
  });

  it.each([
    { weight: 0.5, mean: 1, variance: 1 },
    { weight: 0.5, mean: 3, variance: 1 },
    { weight: 0.1, mean: 2, variance: 1 },
    { weight: 0.1, mean: 5, variance: 1 },
    { weight: 0.5, mean: 0, variance: 9 },
    { weight: 0.1, mean: 3, variance: 9 },
    { weight: 0.5, mean: 8, variance: 9 },
  ])(
    'lies below the integrated information of two explanations, by no more than a half: $weight, $mean ± √$variance',
    ({ weight, mean, variance }) => {
      const predictions = [normal(weight, 0), normal(1 - weight, mean, variance)];
      const exact = integratedBits(predictions, ['gauge', 'body']);
      const found = expectedBits(predictions, ['gauge', 'body']);
      expect(found).toBeLessThanOrEqual(exact + 1e-9);
      expect(found).toBeGreaterThanOrEqual(0.5 * exact - 1e-9);
    },
  );

  it('stays between 0 and the information for many explanations in three groups', () => {
    const random = new Random(7);
    for (let k = 0; k < 60; k++) {
      const raw = Array.from({ length: 3 + (k % 6) }, () => -Math.log(random.uniform(1e-9, 1)));
      const total = raw.reduce((a, b) => a + b, 0);
      const predictions = raw.map((w) =>
        normal(w / total, random.uniform(-10, 10), random.uniform(0.5, 3.5)),
      );
      const groups = raw.map(() => random.pick(['gauge', 'body', 'neither']));
      const found = expectedBits(predictions, groups);
      const exact = integratedBits(predictions, groups);
      expect(found).toBeGreaterThanOrEqual(0);
      // A difference of two bounds is no bound by itself; on these it is one, to rounding.
      expect(found).toBeLessThanOrEqual(exact + 1e-4);
      expect(found).toBeGreaterThanOrEqual(0.3 * exact - 0.02);
    }
  });
});

describe('the Bhattacharyya coefficient', () => {
  it('is the integral of the root of both densities, with a shared covariance', () => {
    // Source: Kailath 1967; the integral by a sum over an even grid.
    const [a, b] = [normal(1, 0.4, 1.3), normal(1, 2.9, 2.2)];
    let integral = 0;
    for (let x = -40; x <= 40; x += 0.05)
      integral += 0.05 * Math.sqrt(density(x, 0.4, 1.3) * density(x, 2.9, 2.2));
    expect(coefficient(a, b)).toBeCloseTo(integral, 10);
  });

  it('is the same in two dimensions, with correlated readings', () => {
    const a = { weight: 1, mean: [0, 0], covariance: [1, 0.6, 0.6, 2] };
    const b = { weight: 1, mean: [1, -2], covariance: [1.5, -0.3, -0.3, 1] };
    const at = (p: Prediction, x: number, y: number): number => {
      const [vx = NaN, c = NaN, , vy = NaN] = p.covariance;
      const [dx, dy] = [x - (p.mean[0] ?? NaN), y - (p.mean[1] ?? NaN)];
      const det = vx * vy - c * c;
      return (
        Math.exp((-0.5 * (vy * dx * dx - 2 * c * dx * dy + vx * dy * dy)) / det) /
        (2 * Math.PI * Math.sqrt(det))
      );
    };
    let integral = 0;
    for (let x = -10; x <= 10; x += 0.1)
      for (let y = -12; y <= 12; y += 0.1) integral += 0.01 * Math.sqrt(at(a, x, y) * at(b, x, y));
    expect(coefficient(a, b)).toBeCloseTo(integral, 9);
  });
});

describe('entropyBits', () => {
  it('is 1 for a fair coin, 2 for four alike, 0 for what is certain', () => {
    expect(entropyBits([0.5, 0.5])).toBe(1);
    expect(entropyBits([0.25, 0.25, 0.25, 0.25])).toBe(2);
    expect(entropyBits([1, 0])).toBe(0);
  });
});
