import { describe, expect, it } from 'vitest';
import { keepExtremes } from '@/app/_figures/drawing/keep-extremes';
import { funnelDrawing } from '@/app/rates/_parts/funnel-drawing';
import { guardBands } from '@/app/rates/_parts/guard-bands';
import { rateQuestion } from '@/app/rates/_parts/question';
import { ratesCsv } from '@/app/rates/_parts/rates-csv';
import { jobsOfGroup, selectJobs } from '@/app/rates/_parts/select-jobs';
import { changeWord } from '@/app/what-if/_parts/measures';
import { fairRates, type RateJob } from '@/lib/assess/rates';

const job = (number: number, more: Partial<RateJob> = {}): RateJob => ({
  job: `J${number}`,
  technician: 'T1',
  sheet: 'S1',
  month: '2026-03',
  gauges: ['G1', 'G2'],
  right: true,
  sections: [
    { section: 'front', right: true },
    { section: 'rear', right: true },
  ],
  start: { measured: true, out: 1, size: 1, zone: 'front' },
  ...more,
});

const NO_FILTER = rateQuestion({}).question;

describe('which jobs count', () => {
  it('keeps the months at both ends, and a job for every gauge that hung in it', () => {
    const jobs = [
      job(1, { month: '2026-02' }),
      job(2),
      job(3, { month: '2026-05' }),
      job(4, { gauges: ['G2'] }),
    ];
    const selected = selectJobs(jobs, { ...NO_FILTER, from: '2026-02', to: '2026-03', gauge: 'G1' });
    expect(selected.map((one) => one.job)).toEqual(['J1', 'J2']);
  });

  it('counts a job by the chosen section alone, and not where that section was not measured', () => {
    const jobs = [
      job(1, {
        right: false,
        sections: [
          { section: 'front', right: true },
          { section: 'rear', right: false },
        ],
      }),
      job(2, { sections: [{ section: 'rear', right: true }] }),
    ];
    const front = selectJobs(jobs, { ...NO_FILTER, section: 'front' });
    expect(front.map(({ job: number, right }) => [number, right])).toEqual([['J1', true]]);
  });

  it('opens every group of every grouping to as many jobs as its rate counts', () => {
    const jobs = Array.from({ length: 40 }, (_, i) =>
      job(i, { technician: `T${i % 3}`, right: i % 4 !== 0, gauges: i % 2 === 0 ? ['G1'] : ['G1', 'G2'] }),
    );
    for (const by of ['technician', 'sheet', 'section', 'gauge', 'month', 'zone'] as const)
      for (const group of fairRates(jobs, by).groups) {
        const behind = jobsOfGroup(jobs, by, group.name);
        expect(behind, `${by} ${group.name}`).toHaveLength(group.jobs);
        expect(behind.filter(({ right }) => right)).toHaveLength(group.right);
      }
  });
});

describe('the question in the address', () => {
  it('leaves out what it cannot understand and says so', () => {
    const { question, notes } = rateQuestion({ by: 'weather', from: '2026-13', technician: 'QUI' });
    expect(question).toMatchObject({ by: 'technician', from: undefined, technician: 'QUI' });
    expect(notes).toHaveLength(2);
    expect(notes[1]).toContain('“2026-13” is not understood as from');
  });
});

describe('the funnel', () => {
  const jobs = Array.from({ length: 300 }, (_, i) =>
    job(i, { sheet: `S${i % 3}`, right: i % 3 === 0 ? i % 4 === 0 : i % 7 !== 0 }),
  );
  const rates = fairRates(jobs, 'sheet');

  it('names in words whoever lies outside, and marks them by more than colour', () => {
    const { label, shapes } = funnelDrawing(rates);
    expect(label.replaceAll('\u00a0', ' ')).toContain('S0, 25 % of 100 jobs: below the 99.8 % limit');
    const outside = rates.groups.filter(({ funnel }) => funnel.place !== 'inside').length;
    const marks = shapes.filter((shape) => shape.kind === 'dot' && shape.ink === 'mark' && shape.r > 6);
    expect(marks).toHaveLength(outside);
  });

  it('is handed out with a row for each group and a cell for each column', () => {
    const { columns, rows } = ratesCsv(rates);
    expect(rows.map(([name]) => name)).toEqual(['S0', 'S1', 'S2']);
    for (const row of rows) expect(row).toHaveLength(columns.length);
  });
});

describe('a long series', () => {
  it('is reduced without losing its largest, its smallest and its ends', () => {
    const points = Array.from({ length: 5000 }, (_, i) => ({ i, value: Math.sin(i / 50) }));
    const at = (i: number, value: number) => {
      const point = points[i];
      if (point !== undefined) point.value = value;
    };
    at(1777, 40);
    at(3333, -40);
    const kept = keepExtremes(points, ({ value }) => [value], 120);
    expect(kept.length).toBeLessThanOrEqual(125);
    expect(kept.map(({ i }) => i)).toEqual(expect.arrayContaining([0, 1777, 3333, 4999]));
  });
});

describe('words for a change', () => {
  it('says better or worse only where the interval leaves out zero and is not zero as shown', () => {
    expect(changeWord({ value: -1, low: -2, high: -0.1 })).toBe('better');
    expect(changeWord({ value: 1, low: 0.1, high: 2 })).toBe('worse');
    expect(changeWord({ value: -1, low: -2, high: 0.1 })).toBe('no clear change');
    expect(changeWord({ value: 0.001, low: 0.001, high: 0.002 })).toBe('hardly any change');
  });
});

describe('guard bands', () => {
  const known = (sd: number) => ({ sd, df: 100, low: sd, high: sd, why: null });
  const prior = { scatter: 1.2, flatScatter: 1, offShare: 0.6, offScatter: 4, dimensions: 500, why: null };

  it('grow with the distance from the zero span, and hold the risk to what was wanted', () => {
    const [midway, beyond] = guardBands({ setting: known(0.8), repeatability: known(0.4) }, prior) ?? [];
    expect(beyond?.uncertainty).toBeGreaterThan(midway?.uncertainty ?? Infinity);
    expect(midway?.guard.guard).toBeGreaterThan(0);
    expect(midway?.guard.risks?.outGivenAccepted).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(midway?.guard.without.outGivenAccepted).toBeGreaterThan(0.05);
  });

  it('are not told where the shop’s scatter is not known', () => {
    const none = { sd: null, df: null, low: null, high: null, why: 'Nothing read.' };
    expect(guardBands({ setting: none, repeatability: known(0.4) }, prior)).toBeNull();
  });
});
