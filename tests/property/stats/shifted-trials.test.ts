import fc from 'fast-check';
import { expect, test } from 'vitest';
import { poissonBinomial } from '@/lib/stats';
import { shifted, shiftAtTail } from '@/lib/stats/rates/shifted-trials';

const chance = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });

test('at the shift that was found, the trials added up one by one have that very tail', () => {
  fc.assert(
    fc.property(
      fc.array(chance, { minLength: 1, maxLength: 300 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.constantFrom('at least' as const, 'at most' as const),
      fc.constantFrom(0.25, 0.025, 0.001),
      (chances, share, side, tail) => {
        const least = side === 'at least' ? 1 : 0;
        const seen = least + Math.round(share * (chances.length - 1));
        const theta = shiftAtTail(chances, seen, side, tail);
        const count = poissonBinomial(chances.map((p) => shifted(p, theta)));
        const found = side === 'at least' ? count.atLeast(seen) : count.atMost(seen);
        expect(Math.abs(found / tail - 1)).toBeLessThan(1e-11);
      },
    ),
    { numRuns: 200, seed: 20 },
  );
});
