import { describe, expect, it } from 'vitest';
import { classProbabilities } from '@/lib/assess/cause/classes';
import reference from '../data/assess/class-probabilities.json';

/** A fiftieth of a permille: far below anything that a person reads. */
const ACCURACY = 2e-5;

describe('classProbabilities against bivariate normal rectangles of scipy', () => {
  it.each(reference.cases)('$name', ({ tolerance, ...expected }) => {
    const found = classProbabilities(expected, tolerance);
    [expected.neither, expected.gaugeOnly, expected.bodyOnly, expected.both].forEach((value, i) => {
      const error = Math.abs((found[i] ?? NaN) - value);
      expect(error, `class ${i}: expected ${value}, got ${found[i]}`).toBeLessThan(ACCURACY);
    });
  });

  it('covers both signs of the correlation up to nearly one line, and tails', () => {
    const correlations = reference.cases.map((c) => c.covariance / Math.sqrt(c.varGauge * c.varBody));
    expect(Math.min(...correlations)).toBeLessThan(-0.99999);
    expect(Math.max(...correlations)).toBeGreaterThan(0.999);
  });
});
