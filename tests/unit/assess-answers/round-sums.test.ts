import { expect, it } from 'vitest';
import { RoundSums } from '@/lib/assess/answers/round-sums';
import type { SettingError } from '@/lib/assess/answers/setting-errors';

const errors = (...mm: number[]): SettingError[] =>
  mm.map((error) => ({
    ...{ technician: 'A', gauge: 'C1', at: 0, section: 'front', side: 'L', distance: 0, error },
    readingDf: 0,
    readingSs: 0,
  }));

it('a round counts once for a bias, however many heights share its datum, and only what lies within it for scatter', () => {
  const sums = new RoundSums();
  sums.add('technician', 'A', '2026-01', errors(1, 2, 3));
  sums.add('technician', 'A', '2026-01', errors(-1, 1));
  const [bias, scatter] = sums.series();
  // Means of the rounds 2 and 0; squares within them 2 and 2, on 2 and 1 degrees of freedom.
  expect(bias?.periods).toEqual([{ period: '2026-01', n: 2, mean: 1, ss: 2 }]);
  expect(scatter?.periods).toEqual([{ period: '2026-01', n: 4, mean: 0, ss: 4 }]);
});

it('a datum that is off by the same for a whole round leaves the scatter as it is', () => {
  const scatterOf = (...rounds: SettingError[][]) => {
    const sums = new RoundSums();
    for (const round of rounds) sums.add('technician', 'A', '2026-01', round);
    return sums.series()[1]?.periods[0]?.ss;
  };
  expect(scatterOf(errors(5, 6, 7))).toBeCloseTo(scatterOf(errors(0, 1, 2)) ?? NaN, 12);
});
