import { describe, expect, it } from 'vitest';
import type { HeightVerdict, RoundVerdict } from '@/lib/assess';
import { firstReadings, habitsOf } from '@/lib/assess/habits';
import { collapse } from '@/lib/measure';
import { demoShop, demoTruth } from '@/seed';
import { tallyShop } from '@/tests/simulation/tally-shop';

/**
 * The demo shop's planted habits. Verdicts are those of somebody who knows the truth, since the shop's own take long;
 * `at-size.test.ts` takes those.
 */
const SIGNATURES: Record<string, string> = {
  'clearance left out': 'clearance left out',
  'clearance twice': 'clearance added twice',
  'another mark': 'another fixed mark',
};
const verdicts = demoTruth().jobs.flatMap(({ job, rounds }) =>
  rounds.map(({ stage, attempt, heights }): RoundVerdict => ({
    job,
    stage,
    attempt,
    decidable: true,
    why: null,
    pZeroMisset: 0,
    datum: [],
    heights: heights.map((height): HeightVerdict => ({
      setup: height.setup,
      gauge: height.gauge,
      technician: height.technician,
      point: height.point,
      side: height.side,
      station: height.station,
      zero: height.zero,
      deviation: height.deviation,
      p: { neither: 0, gauge: 0, body: 0, both: 0, [height.cause]: 1 },
      misset: height.gaugePart,
      body: height.bodyPart,
      signature: SIGNATURES[height.fault ?? ''] ?? null,
    })),
    centerline: [],
    leftOut: 0,
    nextChecks: [],
  })),
);
const { readings } = demoShop();
const found = habitsOf(tallyShop(collapse(readings), verdicts, firstReadings(readings)));

describe('the habits of the demo shop', () => {
  it('are found, and nobody else is blamed', () => {
    expect(found.map(({ technician, habit }) => `${technician} ${habit}`).sort()).toEqual([
      'ASH preferred-digits',
      'MAR clearance-forgotten',
      'THI heights-first',
      'WIN low-hanger',
    ]);
  });

  it('are told with the sizes that were planted', () => {
    const effect = (technician: string) => found.find((one) => one.technician === technician)?.effect;
    // 1.9 mm lower on the left; 85 of 100 readings taken to halves, and a fifth of the others by chance.
    expect(effect('WIN')?.low).toBeLessThan(-1.9);
    expect(effect('WIN')?.high).toBeGreaterThan(-1.9);
    expect(effect('ASH')?.low).toBeGreaterThan(0.75);
    expect(effect('THI')?.value).toBe(1);
  });

  it('are told in sentences, with setups to open', () => {
    for (const { evidence, shownBy } of found) {
      expect(evidence).toMatch(/95 % interval .*\.$/);
      expect(shownBy.length).toBeGreaterThan(10);
      expect(shownBy[0]).toMatch(/^K\d{4}\/[AB]\d-\d\d$/);
    }
  });
});
