import { describe, expect, it } from 'vitest';
import { ownRounds } from '@/app/technicians/_parts/own-rounds';
import type { StoredHeight } from '@/lib/access';
import type { HeightVerdict, RoundVerdict } from '@/lib/assess';

const height = (
  setup: string,
  technician: string,
  p: Partial<HeightVerdict['p']>,
  zero = false,
): HeightVerdict => ({
  ...{ setup, technician, zero, gauge: 'CG1', point: 'A', side: 'L', station: 0, deviation: 6 },
  ...{ misset: 0, body: 0, signature: null },
  p: { neither: 0, gauge: 0, body: 0, both: 0, ...p },
});

const round: RoundVerdict & { at: number } = {
  ...{ job: 'J1', stage: 'after', attempt: 1, decidable: true, why: null, at: 0, pZeroMisset: 0 },
  ...{ datum: [], centerline: [], leftOut: 0, nextChecks: [] },
  heights: [
    height('1', 'OWN', { gauge: 1 }),
    height('2', 'OWN', { neither: 1 }),
    height('3', 'OTHER', { body: 1 }),
    height('4', 'OWN', { gauge: 1 }, true),
  ],
};

const proof: StoredHeight = {
  ...height('1', 'OWN', { gauge: 1 }),
  ...{ job: 'J1', stage: 'after', attempt: 1, hungAt: 0, cause: 'gauge' },
};

describe('the rounds of one hand', () => {
  it('hold the heights that this hand hung away from the zero stations, and nobody else’s', () => {
    const [own] = ownRounds([round], 'OWN', [], 9);
    expect(own?.heights).toBe(2);
    expect(own?.doubtful.map(({ setup, call }) => [setup, call])).toEqual([['1', 'likely-gauge']]);
  });

  it('tell what a re-check showed of a height', () => {
    const [own] = ownRounds([round], 'OWN', [proof], 9);
    expect(own?.doubtful.map(({ proved }) => proved)).toEqual(['gauge']);
  });
});
