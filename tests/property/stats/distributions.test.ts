import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as dist from '@/lib/stats/distributions';
import { noncentralTUpper } from '@/lib/stats/distributions';

const df = fc.double({ min: 0.3, max: 3000, noNaN: true });
const shape = fc.double({ min: 0.2, max: 2000, noNaN: true });
const tail = fc.double({ min: -12, max: -0.31, noNaN: true }).map((exponent) => 10 ** exponent);

const close = (actual: number, expected: number, tolerance = 1e-10) =>
  Math.abs(actual - expected) <= tolerance * Math.abs(expected);

describe('distribution functions', () => {
  it('upper quantiles and upper tails undo each other, far into the tail', () => {
    fc.assert(
      fc.property(tail, df, df, (q, a, b) => {
        expect(close(dist.normalUpper(dist.normalUpperQuantile(q)), q)).toBe(true);
        expect(close(dist.tUpper(dist.tUpperQuantile(q, a), a), q)).toBe(true);
        expect(close(dist.chiSquareUpper(dist.chiSquareUpperQuantile(q, a), a), q)).toBe(true);
        expect(close(dist.fUpper(dist.fUpperQuantile(q, a, b), a, b), q)).toBe(true);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('normal quantiles undo their tail as far out as a double reaches', () => {
    fc.assert(
      fc.property(fc.double({ min: -300, max: -12, noNaN: true }), (exponent) => {
        const q = 10 ** exponent;
        expect(close(dist.normalUpper(dist.normalUpperQuantile(q)), q, 1e-11)).toBe(true);
      }),
      { seed: 9, numRuns: 300 },
    );
  });

  it('lower quantiles and lower tails undo each other', () => {
    fc.assert(
      fc.property(tail, df, shape, shape, (p, n, a, b) => {
        const x = dist.chiSquareQuantile(p, n);
        if (x > 1e-290) expect(close(dist.chiSquareCdf(x, n), p)).toBe(true);
        const y = dist.betaQuantile(p, a, b);
        // Next to 1 a double cannot hold the quantile to more than its last binary digit.
        if (y > 1e-290 && y < 0.999) expect(close(dist.betaCdf(y, a, b), p)).toBe(true);
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  it('both tails add up to 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), df, df, (u, a, b) => {
        const x = 5 * u * a;
        expect(dist.chiSquareCdf(x, a) + dist.chiSquareUpper(x, a)).toBeCloseTo(1, 12);
        expect(dist.betaCdf(u, a, b) + dist.betaUpper(u, a, b)).toBeCloseTo(1, 12);
        expect(dist.fCdf(3 * u, a, b) + dist.fUpper(3 * u, a, b)).toBeCloseTo(1, 12);
        expect(dist.tCdf(3 * u, a) + dist.tUpper(3 * u, a)).toBeCloseTo(1, 12);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it('binomial tails are sums of the probabilities', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.nat(60),
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        (n, k, p) => {
          let below = 0;
          let from = 0;
          for (let i = 0; i <= n; i++) {
            if (i <= k) below += dist.binomialProbability(i, n, p);
            if (i >= k) from += dist.binomialProbability(i, n, p);
          }
          expect(close(dist.binomialCdf(k, n, p), below, 1e-11)).toBe(true);
          if (k <= n) expect(close(dist.binomialAtLeast(k, n, p), from, 1e-11)).toBe(true);
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });

  it('F with one numerator df is the square of t; chi-square with two is exponential; t with one is Cauchy', () => {
    fc.assert(
      fc.property(df, fc.double({ min: 0.01, max: 20, noNaN: true }), (n, t) => {
        expect(close(dist.fUpper(t * t, 1, n), 2 * dist.tUpper(t, n))).toBe(true);
        expect(close(dist.chiSquareUpper(t, 2), Math.exp(-t / 2), 1e-12)).toBe(true);
        expect(close(dist.tUpper(t, 1), Math.atan(1 / t) / Math.PI, 1e-12)).toBe(true);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('noncentral t without noncentrality is t, and mirrors', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        (n, t, delta) => {
          expect(noncentralTUpper(t, n, 0)).toBeCloseTo(dist.tUpper(t, n), 11);
          expect(noncentralTUpper(t, n, delta) + noncentralTUpper(-t, n, -delta)).toBeCloseTo(1, 11);
        },
      ),
      { seed: 6, numRuns: 100 },
    );
  });
});
