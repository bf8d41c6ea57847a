import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { callOf, DEFAULT_MISS_COST } from '@/lib/assess/round';

const p = (neither: number, gauge: number, body: number, both: number) => ({ neither, gauge, body, both });

describe('callOf', () => {
  it('calls a gauge only when missing damage would cost less than a needless re-hang', () => {
    expect(DEFAULT_MISS_COST).toBe(9);
    expect(callOf(p(0.02, 0.92, 0.05, 0.01))).toBe('likely-gauge');
    expect(callOf(p(0.05, 0.85, 0.09, 0.01))).toBe('undecided');
  });

  it('moves the threshold with the cost the manager sets', () => {
    const doubtful = p(0.01, 0.85, 0.13, 0.01);
    expect(callOf(doubtful, 3)).toBe('likely-gauge');
    expect(callOf(doubtful, 9)).toBe('undecided');
    expect(callOf(p(0, 0.97, 0.03, 0), 9)).toBe('likely-gauge');
    expect(callOf(p(0, 0.97, 0.03, 0), 99)).toBe('undecided');
  });

  it('suspects the body as soon as it is likelier than not, both where both are', () => {
    expect(callOf(p(0.1, 0.35, 0.5, 0.05))).toBe('likely-body');
    expect(callOf(p(0, 0.2, 0.3, 0.5))).toBe('likely-both');
    expect(callOf(p(0, 0.3, 0.35, 0.35))).toBe('likely-body');
  });

  it('says that nothing was found only where that is nearly sure', () => {
    expect(callOf(p(0.95, 0.03, 0.02, 0))).toBe('nothing-found');
    expect(callOf(p(0.8, 0.15, 0.05, 0))).toBe('undecided');
  });

  it('never calls a gauge or nothing while the body is likelier than one over one and the cost', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 }),
        fc.double({ min: 1.01, max: 100, noNaN: true }),
        ([a = 1, b = 1, c = 1, d = 1], cost) => {
          const total = a + b + c + d;
          const probabilities = p(a / total, b / total, c / total, d / total);
          const call = callOf(probabilities, cost);
          const risk = probabilities.body + probabilities.both;
          if (risk > 1 / (1 + cost) + 1e-9) {
            expect(call).not.toBe('likely-gauge');
            expect(call).not.toBe('nothing-found');
          }
          if (risk >= 0.5) expect(['likely-body', 'likely-both']).toContain(call);
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });
});
