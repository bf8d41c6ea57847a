import { describe, expect, it } from 'vitest';
import { recordedDimensions } from '@/lib/assess/recorded';
import {
  firstTimeOutcome,
  firstTimeOutcomes,
  rateByMonth,
  rateBySection,
  rateByTechnician,
  rateOf,
} from '@/lib/assess/right-first-time';
import { collapse, readMeasurementFile, type Job } from '@/lib/measure';
import truth from '@/tests/reference/samples/right-first-time.json';
import { file, height, length, ROUND, type Fields } from '@/tests/unit/measure/lines';
import { sample } from '@/tests/unit/measure/sample';

async function jobsOf(source: string | Buffer): Promise<Job[]> {
  const { readings, faults } = await readMeasurementFile(source);
  expect(faults).toEqual([]);
  return collapse(readings);
}

async function onlyJob(...lines: string[]): Promise<Job> {
  const [job, more] = await jobsOf(file(lines));
  if (job === undefined || more !== undefined) throw new Error('One job was expected.');
  return job;
}

const at = (minute: number) => `2025-01-06T09:0${minute}:00Z`;
const afterwards = (changed: Fields = {}) => length({ stage: 'after', ...changed });

describe('what counts for the record', () => {
  it('the last setup of a dimension, by the mean of its readings', async () => {
    const job = await onlyJob(
      afterwards({ setup: 'later', taken_at: at(5), value_mm: '1312' }),
      afterwards({ setup: 'later', taken_at: at(6), value_mm: '1313', repeat: '2' }),
      afterwards({ setup: 'first', taken_at: at(1), value_mm: '1330' }),
    );
    const dimensions = job.rounds.flatMap(recordedDimensions);
    expect(dimensions).toMatchObject([{ setup: 'later', n: 2, deviation: 2.5, within: true, setups: 2 }]);
  });

  it.each([
    ['1313', true],
    ['1307', true],
    ['1313.1', false],
    ['1306.9', false],
  ])('%s against 1310 ± 3 is within: %s', async (value_mm, within) => {
    const job = await onlyJob(afterwards({ value_mm }));
    expect(job.rounds.flatMap(recordedDimensions).map((d) => d.within)).toEqual([within]);
    expect(firstTimeOutcome(job)?.right).toBe(within);
  });

  it('neither side hides behind the other where they share letters', async () => {
    const both = ROUND.flatMap((line) => [line, line.replace(',L,', ',R,')]).map((line) =>
      line.replace('before', 'after'),
    );
    const ab = { point: 'A-B', nominal_mm: '1500' };
    const job = await onlyJob(
      ...both,
      afterwards({ ...ab, setup: 'left', taken_at: at(1), value_mm: '1510' }),
      afterwards({ ...ab, setup: 'right', taken_at: at(2), value_mm: '1500' }),
    );
    const lengths = job.rounds.flatMap(recordedDimensions).filter((d) => d.quantity === 'length');
    expect(lengths.map(({ setup, within, setups }) => [setup, within, setups])).toEqual([
      ['left', false, 1],
      ['right', true, 1],
    ]);
  });
});

describe('right first time', () => {
  it.each(['standard', 'hard'] as const)(
    'agrees with the simulation for every job of %s.csv',
    async (name) => {
      const outcomes = firstTimeOutcomes(await jobsOf(sample(`${name}.csv`)));
      expect(Object.fromEntries(outcomes.map(({ job, right }) => [job, right]))).toEqual(
        truth.right_first_time[name],
      );
    },
  );

  it('a job without a first measuring after the repair is neither right nor wrong', async () => {
    expect(firstTimeOutcome(await onlyJob(length()))).toBeNull();
    expect(firstTimeOutcome(await onlyJob(afterwards({ attempt: '2' })))).toBeNull();
  });

  it('a second attempt does not change the first', async () => {
    const job = await onlyJob(
      afterwards({ value_mm: '1300' }),
      afterwards({ attempt: '2', setup: 'again', taken_at: at(9), value_mm: '1310' }),
    );
    expect(firstTimeOutcome(job)).toMatchObject({ right: false, controlled: 1, out: 1 });
  });

  it('belongs to the technician who hung the first setup of that round', async () => {
    const job = await onlyJob(
      afterwards({ setup: 'two', technician: 'T2', taken_at: at(4), point: 'K-P' }),
      afterwards({ setup: 'one', technician: 'T1', taken_at: at(3) }),
      length({ setup: 'before', technician: 'T3', taken_at: at(1) }),
    );
    expect(firstTimeOutcome(job)?.technician).toBe('T1');
  });

  it('a section is right when all that was measured there is within', async () => {
    const job = await onlyJob(
      ...ROUND.map((line) =>
        line
          .replace('before', 'after')
          .replace(',front,0,no,200,3,100,1,300.5', ',front,0,no,200,3,100,1,309'),
      ),
    );
    const sections = rateBySection(firstTimeOutcomes([job]));
    expect(sections.get('center')).toMatchObject({ jobs: 1, right: 1 });
    expect(sections.get('front')).toMatchObject({ jobs: 1, right: 0 });
    expect(sections.get('rear')).toMatchObject({ jobs: 0, rate: null, why: expect.any(String) as string });
  });
});

describe('rates', () => {
  const outcome = (technician: string, right: boolean, taken = '2025-01-06T09:00:00Z', outBefore = 2) => ({
    job: '',
    sheet: 'S1',
    technician,
    at: Date.parse(taken),
    right,
    controlled: 20,
    out: right ? 0 : 1,
    sections: [],
    outBefore,
  });

  it('carry the Wilson interval', () => {
    const outcomes = [...Array.from({ length: 81 }, () => true), ...Array.from({ length: 182 }, () => false)];
    const rate = rateOf(outcomes.map((right) => ({ right })));
    // Newcombe (1998), Statistics in Medicine 17, 857–872, table I, method 3: 81/263 gives 0.2553 to 0.3662.
    expect(rate.rate).toBeCloseTo(0.308, 4);
    expect(rate.low).toBeCloseTo(0.2553, 4);
    expect(rate.high).toBeCloseTo(0.3662, 4);
  });

  it('of nothing are null, with the reason', () => {
    expect(rateOf([])).toEqual({
      jobs: 0,
      right: 0,
      rate: null,
      low: null,
      high: null,
      why: expect.any(String) as string,
    });
  });

  it('of technicians are drawn towards the shop, and those without a job are there', () => {
    const outcomes = [
      ...Array.from({ length: 30 }, (_, i) => outcome('T1', i < 27)),
      ...Array.from({ length: 30 }, (_, i) => outcome('T2', i < 6)),
      ...Array.from({ length: 4 }, () => outcome('T3', false)),
    ];
    const rates = rateByTechnician(outcomes, ['T4']);
    expect([...rates.keys()]).toEqual(['T1', 'T2', 'T3', 'T4']);
    const { rate, shrunk } = rates.get('T3') ?? {};
    expect(rate).toBe(0);
    expect(shrunk).toBeGreaterThan(0.05);
    expect(shrunk).toBeLessThan(33 / 64);
    expect(rates.get('T1')?.shrunk).toBeLessThan(0.9);
    expect(rates.get('T4')).toMatchObject({ jobs: 0, rate: null, expected: null });
  });

  it('are expected to be lower where the jobs were harder', () => {
    const outcomes = [
      ...Array.from({ length: 60 }, (_, i) => outcome('easy', i < 54, '2025-01-06T09:00:00Z', 0)),
      ...Array.from({ length: 60 }, (_, i) => outcome('hard', i < 12, '2025-01-06T09:00:00Z', 12)),
    ];
    const rates = rateByTechnician(outcomes);
    expect(rates.get('easy')?.expected).toBeCloseTo(54, -1);
    expect(rates.get('hard')?.expected).toBeCloseTo(12, -1);
    expect((rates.get('easy')?.expected ?? 0) + (rates.get('hard')?.expected ?? 0)).toBeCloseTo(66, 0);
  });

  it('by month follow the calendar of the shop', () => {
    const late = outcome('T1', true, '2025-01-31T23:30:00Z');
    expect([...rateByMonth([late], 'UTC').keys()]).toEqual(['2025-01']);
    expect([...rateByMonth([late], 'Europe/Berlin').keys()]).toEqual(['2025-02']);
  });
});

it('heights of zero stations count for the record too', async () => {
  const lines = [
    height({ stage: 'after', value_mm: '310' }),
    ...ROUND.slice(1).map((l) => l.replace('before', 'after')),
  ];
  expect(firstTimeOutcome(await onlyJob(...lines))?.right).toBe(false);
});
