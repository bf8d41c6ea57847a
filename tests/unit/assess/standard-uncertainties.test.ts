import { expect, test } from 'vitest';
import { setupDimensionKey, standardUncertainties, type Learned } from '@/lib/assess';
import type { Observation, Round, Setup } from '@/lib/measure';

const hand = { reading: 0.4, setting: 1 };
const learned = {
  technicians: { T: hand, U: { reading: 0.4, setting: 3 } },
  newTechnician: { reading: 0.5, setting: 2 },
  lengths: { scatter: 0.5 },
} as unknown as Learned;

const seen = (point: string, change: Partial<Observation>): Observation => ({
  quantity: 'height',
  point,
  side: 'L',
  section: 'center',
  station: 0,
  zero: false,
  nominal: 200,
  tolerance: 3,
  n: 1,
  deviation: 0,
  ss: 0,
  cause: null,
  takenAt: 0,
  ...change,
});

const setup = (label: string, ...observations: Observation[]): Setup => ({
  label,
  technician: 'T',
  gauge: 'C1',
  gaugeKind: 'centering',
  takenAt: 0,
  observations,
});

const round: Round = {
  job: 'J',
  sheet: null,
  stage: 'before',
  attempt: 1,
  clearance: 0,
  setups: [
    setup('Z1', seen('A', { station: 1000, zero: true })),
    setup('Z2', seen('B', { station: 2000, zero: true })),
    setup('S1', seen('F', { station: 0, n: 4 })),
    setup('S2', seen('M', { station: 1500 })),
    setup('L1', seen('A-B', { quantity: 'length', side: null, station: null })),
  ],
};

// Worked by hand from GUM 5.1.2: u² = 0.4²/n + 1² + ((1 − λ)·1)² + (λ·1)², λ the lever of the station.
test.each([
  ['a zero station', 'Z1', Math.sqrt(0.16)],
  ['a height before the zero stations, read four times', 'S1', Math.sqrt(0.04 + 1 + 4 + 1)],
  ['a height half way between them', 'S2', Math.sqrt(0.16 + 1 + 0.25 + 0.25)],
  ['a length', 'L1', Math.sqrt(0.16 + 0.25)],
])('standard uncertainty of %s', (_, label, expected) => {
  const observation = round.setups.find((one) => one.label === label)?.observations[0];
  const key = observation && setupDimensionKey(label, observation);
  expect(standardUncertainties(round, learned).get(key ?? '')).toBeCloseTo(expected, 12);
});

test('a height is read against the zero gauges that were hung before it, whoever hung them', () => {
  const rehung: Round = {
    ...round,
    setups: [
      ...round.setups,
      {
        ...setup('Z1b', seen('A', { station: 1000, zero: true })),
        technician: 'U',
        takenAt: 1,
      },
      { ...setup('S3', seen('F', { station: 0 })), takenAt: 2 },
    ],
  };
  const found = standardUncertainties(rehung, learned);
  const at = (label: string) => found.get(setupDimensionKey(label, seen('F', {})));
  expect(at('S1')).toBeCloseTo(Math.sqrt(0.04 + 1 + 4 + 1), 12);
  // Worked by hand: the lever of station 0 is −1, so the zero station at 1000 counts twice: (2·3)².
  expect(at('S3')).toBeCloseTo(Math.sqrt(0.16 + 1 + 36 + 1), 12);
});

test('where no zero gauge hung before a height, the first ones stand in for it', () => {
  const late: Round = {
    ...round,
    setups: round.setups.map((one) => (one.label.startsWith('Z') ? { ...one, takenAt: 9 } : one)),
  };
  expect(standardUncertainties(late, learned)).toEqual(standardUncertainties(round, learned));
});
