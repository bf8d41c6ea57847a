import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { MeasuredSums } from '@/lib/assess/measured';
import { repeatability, robustRepeatability } from '@/lib/assess/repeatability';
import { collapse, type Reading } from '@/lib/measure';

const data = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../reference/data/${name}`, import.meta.url)), 'utf8');

/** One setup for each group of the data, all by one technician. */
function readingsOf(csv: string): Reading[] {
  const rows = csv
    .trim()
    .split('\n')
    .slice(1)
    .map((row) => row.split(','));
  return rows.map(([group = '', value = ''], i) => ({
    line: i + 2,
    job: 'J1',
    sheet: null,
    stage: 'before',
    attempt: 1,
    takenAt: i,
    technician: 'T1',
    gauge: 'M1',
    gaugeKind: 'tram',
    setup: group,
    quantity: 'length',
    point: 'K-N',
    side: null,
    section: null,
    station: null,
    zero: false,
    nominal: 196,
    tolerance: 3,
    clearance: 0,
    repeat: i + 1,
    value: Number(value),
    cause: null,
  }));
}

describe('repeatability', () => {
  it('is the residual standard deviation of NIST StRD SiRstv, where an instrument is a setup', () => {
    // Certified value of NIST Statistical Reference Datasets, ANOVA, SiRstv (US government work).
    const jobs = collapse(readingsOf(data('02-strd-anova/SiRstv.csv')));
    const { df, sd } = MeasuredSums.of(jobs).repeatability('T1');
    expect(df).toBe(20);
    expect(sd).toBeCloseTo(0.104076068334656, 9);
  });

  it('has the χ² interval of its degrees of freedom', () => {
    // 4.2426…/√18 = 1: sums of squares 10 and 8 on 10 and 8 df; χ²(0.975; 18) = 31.526378, χ²(0.025; 18) = 8.230746
    // (NIST/SEMATECH e-Handbook, 1.3.6.7.4, tables, to three decimals 31.526 and 8.231).
    const { sd, df, low, high } = repeatability([
      { n: 11, ss: 10 },
      { n: 9, ss: 8 },
      { n: 1, ss: 0 },
    ]);
    expect([sd, df]).toEqual([1, 18]);
    expect(low).toBeCloseTo(Math.sqrt(18 / 31.526378), 6);
    expect(high).toBeCloseTo(Math.sqrt(18 / 8.230746), 6);
  });

  it('is null with a reason where nothing was read twice', () => {
    expect(repeatability([{ n: 1, ss: 0 }])).toMatchObject({
      sd: null,
      low: null,
      why: expect.any(String) as string,
    });
    expect(robustRepeatability([{ n: 1, ss: 0 }])).toMatchObject({
      sd: null,
      why: expect.any(String) as string,
    });
  });

  it('the robust one is hardly moved by a wild reading', () => {
    const plain = Array.from({ length: 40 }, (_, i) => ({ n: 3, ss: 2 * (0.3 + (i % 9) / 20) ** 2 }));
    const wild = [...plain, { n: 3, ss: 2 * 30 ** 2 }];
    const [before, after] = [robustRepeatability(plain).sd ?? 0, robustRepeatability(wild).sd ?? 0];
    expect(after / before).toBeLessThan(1.05);
    expect((repeatability(wild).sd ?? 0) / (repeatability(plain).sd ?? 1)).toBeGreaterThan(5);
    expect(robustRepeatability(wild).pulled).toBeGreaterThan(robustRepeatability(plain).pulled);
  });
});
