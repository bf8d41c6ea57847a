import { describe, expect, it } from 'vitest';
import {
  fairRates,
  funnelCurves,
  jobStart,
  MOST_TOLERANCES,
  rateJob,
  type RateJob,
} from '@/lib/assess/rates';
import { collapse, readMeasurementFile, type Job } from '@/lib/measure';
import { Random } from '@/tests/simulation/random';
import { file, length, type Fields } from '@/tests/unit/measure/lines';

/** Jobs of a shop: the chance goes with how many dimensions were out; T9 gets the hard ones and is as able as the rest. */
function shop(jobs: number, seed: number): RateJob[] {
  const random = new Random(seed);
  return Array.from({ length: jobs }, (_, i) => {
    const technician = `T${(i % 4) + 6}`;
    const out =
      technician === 'T9' ? 6 + Math.floor(random.uniform(0, 12)) : Math.floor(random.uniform(0, 5));
    const chance = 1 / (1 + Math.exp(-(3 - 1.3 * Math.log1p(out))));
    const zone = out === 0 ? 'none' : random.chance(0.7) ? 'front' : 'rear';
    return {
      job: `J${i}`,
      technician,
      sheet: i % 3 === 0 ? null : 'S1',
      month: `2025-${String(Math.floor((12 * i) / jobs) + 1).padStart(2, '0')}`,
      gauges: i % 2 === 0 ? ['G1', 'G2'] : ['G2'],
      right: random.chance(chance),
      sections: [{ section: 'front', right: random.chance(0.9) }],
      start: { measured: true, out, size: out === 0 ? 0 : 1.5, zone },
    };
  });
}

describe('fairRates', () => {
  const jobs = shop(400, 3);

  it('names groups in order, whatever their rates', () => {
    const names = fairRates(jobs, 'technician').groups.map(({ name }) => name);
    expect(names).toEqual(['T6', 'T7', 'T8', 'T9']);
  });

  it('does not blame the hand that gets the hard jobs: low rate, but as expected', () => {
    const rates = fairRates(jobs, 'technician');
    const hard = rates.groups.find(({ name }) => name === 'T9');
    expect(hard?.funnel.place).toMatch(/^low/);
    expect(hard?.adjusted.low).toBeLessThan(1);
    expect(hard?.adjusted.high).toBeGreaterThan(1);
    expect(
      rates.hardness?.coefficients.find(({ name }) => name.startsWith('dimensions out'))?.high,
    ).toBeLessThan(0);
  });

  it('expects as many right jobs over all groups as there were', () => {
    const { groups, overall } = fairRates(jobs, 'zone');
    const expected = groups.reduce((sum, { adjusted }) => sum + (adjusted.expected ?? NaN), 0);
    expect(expected).toBeCloseTo(overall.right, 6);
  });

  it('counts a job for each of its gauges and says so; leaves out jobs without a sheet', () => {
    const gauges = fairRates(jobs, 'gauge');
    expect(gauges.groups.map(({ jobs: n }) => n)).toEqual([200, 400]);
    expect(gauges.notes.join(' ')).toMatch(/share jobs/);
    expect(fairRates(jobs, 'sheet').groups.map(({ jobs: n }) => n)).toEqual([266]);
  });

  it('marks a group of few jobs and draws it towards the others', () => {
    const few = [...jobs, { ...(jobs[0] as RateJob), technician: 'T1', right: false }];
    const [first, second] = fairRates(few, 'technician').groups;
    expect(first).toMatchObject({ name: 'T1', jobs: 1, rate: 0, small: true });
    expect(first?.smallWhy).toMatch(/Only 1 job/);
    expect(first?.shrunk.mean).toBeGreaterThan(0.3);
    expect(second?.small).toBe(false);
  });

  it('has no adjustment for a section, and says why', () => {
    const [front] = fairRates(jobs, 'section').groups;
    expect(front?.adjusted).toMatchObject({ ratio: null, p: null });
    expect(front?.adjusted.why).toMatch(/whole job/);
  });

  it('widens the funnel only where six or more groups differ beyond chance', () => {
    expect(fairRates(jobs, 'technician').funnel.tau).toBe(0);
    const spread = Array.from({ length: 12 }, (_, g) =>
      Array.from({ length: 60 }, (__, i): RateJob => ({
        ...(jobs[0] as RateJob),
        month: `2025-${String(g + 1).padStart(2, '0')}`,
        right: i < (g % 2 === 0 ? 40 : 56),
      })),
    ).flat();
    const { funnel, groups } = fairRates(spread, 'month');
    expect(funnel.tau).toBeGreaterThan(0.05);
    expect(groups.every(({ funnel: { place } }) => place === 'inside')).toBe(true);
    expect(fairRates(jobs, 'month').funnel.tau).toBe(0);
  });

  it('answers for no jobs and for jobs that are all right', () => {
    expect(fairRates([], 'technician')).toMatchObject({ groups: [], funnel: { target: null } });
    const all = fairRates(
      jobs.slice(0, 40).map((job) => ({ ...job, right: true })),
      'technician',
    );
    expect(all.groups.every(({ adjusted }) => adjusted.ratio === 1)).toBe(true);
    expect(all.hardness?.why).toMatch(/alike/);
  });

  it('draws curves that close in with the number of jobs', () => {
    const curves = funnelCurves(fairRates(jobs, 'technician').funnel, 100);
    const [first, last] = [curves[0], curves.at(-1)];
    expect(last?.jobs).toBe(100);
    expect((last?.high95 ?? 1) - (last?.low95 ?? 0)).toBeLessThan((first?.high95 ?? 1) - (first?.low95 ?? 0));
  });
});

describe('jobStart', () => {
  const jobOf = async (lines: string[]): Promise<Job> => {
    const { readings, faults } = await readMeasurementFile(file(lines));
    expect(faults).toEqual([]);
    const [job] = collapse(readings);
    if (!job) throw new Error('One job was expected.');
    return job;
  };
  const of = (point: string, section: string, value_mm: string, changed: Fields = {}) =>
    length({ point, section, value_mm, nominal_mm: '1000', setup: point, ...changed });

  it('puts the impact where most of the deviation is, not where most dimensions are out', async () => {
    const start = jobStart(
      await jobOf([
        of('A-B', 'front', '1004'),
        of('C-D', 'front', '1004'),
        of('E-F', 'rear', '1015'),
        of('G-H', 'center', '1001'),
      ]),
    );
    expect(start).toMatchObject({ measured: true, out: 3, size: 5, zone: 'rear' });
  });

  it('counts no dimension for more than ten tolerances', async () => {
    const start = jobStart(await jobOf([of('A-B', 'front', '1100')]));
    expect(start).toMatchObject({ out: 1, size: MOST_TOLERANCES, zone: 'front' });
  });

  it('knows nothing of a job that was first measured after the repair', async () => {
    const job = await jobOf([of('A-B', 'front', '1001', { stage: 'after' })]);
    expect(jobStart(job)).toEqual({ measured: false, out: 0, size: 0, zone: 'unknown' });
    expect(rateJob(job)).toMatchObject({ right: true, gauges: [job.rounds[0]?.setups[0]?.gauge] });
  });
});
