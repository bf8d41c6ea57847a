import fc from 'fast-check';
import { expect, it } from 'vitest';
import { assessRound } from '@/lib/assess/round';
import { knownShop } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import { anyRound } from './rounds';

const shop = knownShop({ technicians: { T1: {}, T2: { setting: 0.5, bias: 0.4 } } });

it('a brief verdict says of heights what the whole one says, and of the next checks the first', () => {
  const proposed = new Set<string | undefined>();
  fc.assert(
    fc.property(anyRound({ stations: { min: 1, max: 3 } }), (parts) => {
      const round = roundOf(parts);
      const whole = assessRound(round, shop);
      const brief = assessRound(round, shop, { brief: true });
      const nextChecks = whole.nextChecks.slice(0, 1);
      expect(brief).toEqual({ ...whole, patterns: undefined, centerline: [], nextChecks });
      proposed.add(nextChecks[0]?.action);
    }),
    { seed: 41, numRuns: 15 },
  );
  expect(proposed.size).toBeGreaterThan(1);
});
