import { describe, expect, it } from 'vitest';
import { startingPoint } from '@/lib/assess/cause/learned';
import { bodyPrior, finalJob, handRisks, shopRisk, type FinalJob } from '@/lib/assess/measuring-risk';
import { standardUncertainties, setupDimensionKey } from '@/lib/assess/uncertainty';
import { collapse, readMeasurementFile } from '@/lib/measure';
import { file, height } from '@/tests/unit/measure/lines';

/** Zero gauges at 1000 and 2000, a pair at 3200 further back, in a first measuring after the repair. */
async function job(values: { K: [string, string] }) {
  const at = (
    side: string,
    point: string,
    station_mm: string,
    zero: string,
    value_mm: string,
    minute: number,
  ) =>
    height({
      ...{
        stage: 'after',
        side,
        point,
        station_mm,
        zero,
        value_mm,
        setup: point,
        section: zero === 'yes' ? 'center' : 'rear',
      },
      taken_at: `2025-01-06T09:0${minute}:00Z`,
    });
  const lines = (['L', 'R'] as const).flatMap((side, i) => [
    at(side, 'A', '1000', 'yes', '300', 0),
    at(side, 'B', '2000', 'yes', '300', 1),
    at(side, 'K', '3200', '', values.K[i] ?? '', 2),
  ]);
  const { readings, faults } = await readMeasurementFile(file(lines));
  expect(faults).toEqual([]);
  const [found] = collapse(readings);
  if (!found) throw new Error('One job was expected.');
  return found;
}

describe('finalJob', () => {
  it('has the variances of the standard uncertainties, told apart by whom they are shared with', async () => {
    const measured = await job({ K: ['301', '302'] });
    const learned = startingPoint();
    const final = finalJob(measured, learned);
    const [round] = measured.rounds;
    const [left, right] = final?.dimensions ?? [];
    if (!round || !left || !right) throw new Error('Two heights were expected.');
    const variance = left.own ** 2 + left.shared.reduce((sum, { mm }) => sum + mm * mm, 0);
    const seen = round.setups.find(({ label }) => label === 'K')?.observations[0];
    if (!seen) throw new Error('Setup K was expected.');
    const known = standardUncertainties(round, learned).get(setupDimensionKey('K', seen)) ?? NaN;
    // What is not known of the biases comes on top of it.
    expect(variance).toBeCloseTo(known ** 2 + 0.5 ** 2 + 0.3 ** 2, 10);
    const keys = (one: typeof left) => one.shared.map(({ key }) => key);
    expect(keys(left).filter((key) => keys(right).includes(key))).toEqual([
      'setup K',
      'technician T1',
      'gauge C1',
      'zero A',
      'zero B',
    ]);
  });

  it('leaves out the zero stations, which show no body, and jobs not measured after a repair', async () => {
    const measured = await job({ K: ['301', '302'] });
    expect(finalJob(measured, startingPoint())?.dimensions.map(({ name }) => name)).toEqual([
      'height K L',
      'height K R',
    ]);
    const before = {
      ...measured,
      rounds: measured.rounds.map((round) => ({ ...round, stage: 'before' as const })),
    };
    expect(finalJob(before, startingPoint())).toBeNull();
  });
});

describe('shopRisk', () => {
  const dimension = (deviation: number) => ({
    ...{
      name: 'height K L',
      quantity: 'height' as const,
      technician: 'T1',
      gauge: 'C1',
      deviation,
      tolerance: 3,
      known: 0,
      own: 0.5,
    },
    ...{ within: Math.abs(deviation) <= 3, shared: [], datum: [], missets: [] },
  });
  const jobOf = (name: string, ...deviations: number[]): FinalJob => {
    const dimensions = deviations.map(dimension);
    const right = dimensions.every(({ within }) => within);
    return { job: name, right, again: !right, dimensions };
  };

  it('says in one sentence what is expected, with its limits', () => {
    const { sentence, prior } = shopRisk([jobOf('J1', 0.2, 1), jobOf('J2', 3.2), jobOf('J3', 9)]);
    expect(sentence).toMatch(
      /^Of 1 job called right, 0\.0 \(0 to 0\) are expected not to be\. Of 2 jobs called not right, /,
    );
    expect(prior.why).toMatch(/Only 4 final dimensions/);
  });

  it('doubts a call the more, the nearer a dimension lies to its tolerance', () => {
    const { jobs } = shopRisk([
      jobOf('J1', 0),
      jobOf('J2', 2.5),
      jobOf('J3', 2.95),
      jobOf('J4', 3.1),
      jobOf('J5', 8),
    ]);
    const chances = jobs.map(({ trulyRight }) => trulyRight);
    expect([...chances].sort((a, b) => b - a)).toEqual(chances);
  });

  it('knows only what is certain where nothing is uncertain', () => {
    const exact = { ...dimension(3), own: 0 };
    const { jobs } = shopRisk([{ job: 'J1', right: true, again: false, dimensions: [exact] }]);
    expect(jobs[0]?.trulyRight).toBe(1);
    expect(shopRisk([])).toMatchObject({ calledRate: null, wronglyRight: { of: 0, expected: null } });
  });

  it('takes a height 100 mm off for a slip, not for a body that a repair left there', () => {
    const slip = {
      ...dimension(100),
      missets: [
        { chance: 0.04, sd: 8 },
        { chance: 0.01, sd: 60 },
      ],
    };
    const ordinary = Array.from({ length: 200 }, (_, i) => ({ ...slip, deviation: Math.sin(i) }));
    const prior = bodyPrior([slip, slip, slip, ...ordinary]);
    expect(prior.offScatter).toBeLessThanOrEqual(12);
    const { jobs } = shopRisk([{ job: 'J1', right: false, again: true, dimensions: [slip] }], prior);
    expect(jobs[0]?.trulyRight).toBeGreaterThan(0.9);
  });

  it('lists hands with gauges by name', () => {
    const mixed = [
      dimension(1),
      { ...dimension(0), technician: 'T0', gauge: 'C9' },
      { ...dimension(0), gauge: 'C0' },
    ];
    const rows = handRisks(mixed, bodyPrior(mixed));
    expect(rows.map(({ technician, gauge }) => `${technician} ${gauge}`)).toEqual([
      'T0 C9',
      'T1 C0',
      'T1 C1',
    ]);
    expect(rows[0]?.risks.accepted).toBeGreaterThan(0.8);
  });
});
