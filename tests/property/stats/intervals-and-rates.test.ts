import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaBinomial, binomialInterval, funnelLimits, meanInterval, sdInterval } from '@/lib/stats';
import { binomialAtLeast, binomialCdf } from '@/lib/stats/distributions';

const trials = fc
  .integer({ min: 1, max: 400 })
  .chain((n) => fc.integer({ min: 0, max: n }).map((x) => ({ x, n })));
const method = fc.constantFrom('wilson' as const, 'jeffreys' as const, 'clopper-pearson' as const);
const level = fc.double({ min: 0.5, max: 0.999, noNaN: true });
const values = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 2, maxLength: 20 });
const limit = (value: number | null) => value ?? NaN;

describe('binomialInterval', () => {
  it('mirrors when successes and failures change places', () => {
    fc.assert(
      fc.property(trials, method, level, ({ x, n }, how, at) => {
        const one = binomialInterval(x, n, { method: how, level: at });
        const other = binomialInterval(n - x, n, { method: how, level: at });
        expect(limit(one.low)).toBeCloseTo(1 - limit(other.high), 11);
        expect(limit(one.high)).toBeCloseTo(1 - limit(other.low), 11);
      }),
      { seed: 1 },
    );
  });

  it('holds the rate, grows with the level, and rises with the successes', () => {
    fc.assert(
      fc.property(trials, method, level, ({ x, n }, how, at) => {
        const found = binomialInterval(x, n, { method: how, level: at });
        expect(limit(found.low)).toBeLessThanOrEqual(x / n);
        expect(limit(found.high)).toBeGreaterThanOrEqual(x / n);
        const wider = binomialInterval(x, n, { method: how, level: (1 + at) / 2 });
        expect(limit(wider.low)).toBeLessThanOrEqual(limit(found.low));
        expect(limit(wider.high)).toBeGreaterThanOrEqual(limit(found.high));
        if (x < n) {
          const more = binomialInterval(x + 1, n, { method: how, level: at });
          expect(limit(more.low)).toBeGreaterThan(limit(found.low));
          expect(limit(more.high)).toBeGreaterThanOrEqual(limit(found.high));
        }
      }),
      { seed: 2 },
    );
  });

  it('Clopper–Pearson limits leave exactly the tail', () => {
    fc.assert(
      fc.property(trials, ({ x, n }) => {
        const { low, high } = binomialInterval(x, n, { method: 'clopper-pearson' });
        if (x > 0) expect(binomialAtLeast(x, n, limit(low))).toBeCloseTo(0.025, 10);
        if (x < n) expect(binomialCdf(x, n, limit(high))).toBeCloseTo(0.025, 10);
      }),
      { seed: 3 },
    );
  });
});

describe('sdInterval and meanInterval', () => {
  it('scale with the unit, and the mean’s moves with the origin', () => {
    const scale = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(values, scale, fc.integer({ min: -1000, max: 1000 }), (list, by, shift) => {
        const plain = meanInterval(list);
        const moved = meanInterval(list.map((value) => value * by + shift));
        const tolerance = 1e-9 * (1 + by) * 1000;
        for (const key of ['mean', 'low', 'high'] as const) {
          expect(Math.abs(limit(moved[key]) - (limit(plain[key]) * by + shift))).toBeLessThan(tolerance);
        }
        expect(limit(sdInterval(by, 4).high)).toBeCloseTo(by * limit(sdInterval(1, 4).high), 9);
      }),
      { seed: 4 },
    );
  });

  it('do not depend on the order', () => {
    fc.assert(
      fc.property(values, (list) => {
        const turned = meanInterval([...list].reverse());
        expect(limit(turned.mean)).toBeCloseTo(limit(meanInterval(list).mean), 11);
        expect(limit(turned.sd)).toBeCloseTo(limit(meanInterval(list).sd), 11);
      }),
      { seed: 5 },
    );
  });
});

describe('betaBinomial', () => {
  const units = fc.array(trials, { minLength: 2, maxLength: 15 });

  it('does not depend on the order of the units, and a unit without trials changes nothing', () => {
    fc.assert(
      fc.property(units, (list) => {
        const fit = betaBinomial(list);
        const turned = betaBinomial([{ x: 0, n: 0 }, ...[...list].reverse()]);
        expect(turned.alpha === null).toBe(fit.alpha === null);
        fit.units.forEach(({ mean }, i) => {
          const other = turned.units[list.length - i]?.mean ?? null;
          if (mean === null) expect(other).toBeNull();
          else expect(limit(other)).toBeCloseTo(mean, 8);
        });
      }),
      { seed: 6 },
    );
  });

  it('mirrors, and draws each rate towards the common one', () => {
    fc.assert(
      fc.property(units, (list) => {
        const fit = betaBinomial(list);
        const mirrored = betaBinomial(list.map(({ x, n }) => ({ x: n - x, n })));
        const { alpha, beta } = fit;
        if (alpha === null || beta === null) {
          expect(mirrored.alpha).toBeNull();
          return;
        }
        expect(limit(mirrored.beta) / alpha).toBeCloseTo(1, 6);
        const common = alpha / (alpha + beta);
        list.forEach(({ x, n }, i) => {
          const mean = limit(fit.units[i]?.mean ?? null);
          expect(mean).toBeGreaterThanOrEqual(Math.min(x / n, common) - 1e-12);
          expect(mean).toBeLessThanOrEqual(Math.max(x / n, common) + 1e-12);
        });
      }),
      { seed: 7 },
    );
  });
});

describe('funnelLimits', () => {
  const rate = fc.double({ min: 0.02, max: 0.98, noNaN: true });
  const size = fc.integer({ min: 1, max: 300 });

  it('alarms are the largest and smallest counts whose tail is at most half of what the level leaves', () => {
    fc.assert(
      fc.property(rate, size, level, (p0, n, at) => {
        const { lowAlarm, highAlarm } = funnelLimits(p0, n, at);
        const tail = (1 - at) / 2;
        expect(binomialCdf(limit(lowAlarm), n, p0)).toBeLessThanOrEqual(tail * (1 + 1e-9));
        expect(binomialCdf(limit(lowAlarm) + 1, n, p0)).toBeGreaterThan(tail * (1 - 1e-9));
        expect(binomialAtLeast(limit(highAlarm), n, p0)).toBeLessThanOrEqual(tail * (1 + 1e-9));
        expect(binomialAtLeast(limit(highAlarm) - 1, n, p0)).toBeGreaterThan(tail * (1 - 1e-9));
      }),
      { seed: 8 },
    );
  });

  it('mirrors in its alarms, and holds the rate', () => {
    fc.assert(
      fc.property(rate, size, (p0, n) => {
        const here = funnelLimits(p0, n);
        const there = funnelLimits(1 - p0, n);
        expect(limit(here.lowAlarm)).toBe(n - limit(there.highAlarm));
        expect(limit(here.low)).toBeLessThanOrEqual(p0);
        expect(limit(here.low)).toBeLessThanOrEqual(limit(here.high));
      }),
      { seed: 9 },
    );
  });
});
