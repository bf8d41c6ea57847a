import fc from 'fast-check';
import { expect, it } from 'vitest';
import { CAUSES } from '@/lib/measure/types';
import { explainRound, judgeRound, VERDICT_EFFORT } from '@/lib/assess/cause/judge';
import { classesGiven, heightParts } from '@/lib/assess/cause/outcomes';
import { knownShop } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import { anyRound } from './rounds';

const shop = knownShop({ technicians: { T1: {}, T2: { setting: 0.5, bias: 0.4 } } });

/** The same search with nothing left out at its end, and every height integrated to all digits. */
const TO_THE_END = { ...VERDICT_EFFORT, share: 1 };

it('what a verdict forgoes at the end of its search moves no probability by more than 0.002', () => {
  let furthest = 0;
  fc.assert(
    fc.property(anyRound({ stations: { min: 1, max: 4 } }), (parts) => {
      const round = roundOf(parts);
      const judged = judgeRound(round, shop);
      const whole = explainRound(round, shop, TO_THE_END);
      if ('why' in judged || 'why' in whole) throw new Error('These rounds can be judged.');
      for (const height of heightParts(whole.model)) {
        const said = judged.heights.find(
          ({ setup, side }) => setup === height.pair.label && side === 'LR'[height.side],
        );
        const expected = [0, 0, 0, 0];
        for (const { weight, explanation } of whole.found.explanations) {
          const { classes } = classesGiven(height, height.parts(explanation));
          for (let c = 0; c < 4; c++) expected[c] = (expected[c] ?? 0) + weight * (classes[c] ?? 0);
        }
        CAUSES.forEach((cause, c) => {
          furthest = Math.max(furthest, Math.abs((said?.p[cause] ?? NaN) - (expected[c] ?? NaN)));
        });
      }
      expect(furthest).toBeLessThanOrEqual(0.002);
    }),
    { seed: 43, numRuns: 40 },
  );
  // A share is forgone: else this would hold of itself.
  expect(furthest).toBeGreaterThan(1e-5);
});
