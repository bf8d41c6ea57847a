import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { assessShop } from '@/lib/assess';
import { collapse, readMeasurementFile, writeMeasurementFile, type Reading } from '@/lib/measure';
import { batchReport, type BatchReport } from '@/lib/reports';
import { Random } from '../../simulation/random';

const SAMPLE = new URL('../../reference/samples/standard.csv', import.meta.url);

async function readingsOf(text: string): Promise<Reading[]> {
  const { readings, faults } = await readMeasurementFile(text);
  expect(faults).toEqual([]);
  return readings;
}

const reportOf = (readings: readonly Reading[]): BatchReport => batchReport(assessShop(collapse(readings)));

/** Heights by job, stage, attempt, setup and side. */
const byHeight = (report: BatchReport, mirrored = false): Map<string, BatchReport['heights'][number]> =>
  new Map(
    report.heights.map((height) => {
      const side = mirrored ? (height.side === 'L' ? 'R' : 'L') : height.side;
      return [`${height.job} ${height.stage} ${height.attempt} ${height.setup} ${side}`, height];
    }),
  );

/** The largest difference of any class probability between two reports of the same heights. */
function largestDifference(one: BatchReport, other: BatchReport, mirrored = false): number {
  const there = byHeight(other, mirrored);
  let worst = 0;
  for (const [key, height] of byHeight(one)) {
    const twin = there.get(key);
    if (twin === undefined) throw new Error(`${key} is missing.`);
    for (const name of ['p_neither', 'p_gauge', 'p_body', 'p_both'] as const) {
      worst = Math.max(worst, Math.abs(height[name] - twin[name]));
    }
  }
  return worst;
}

describe('the whole report', () => {
  let text: string;
  let readings: Reading[];
  let plain: BatchReport;
  beforeAll(async () => {
    text = await readFile(SAMPLE, 'utf8');
    readings = await readingsOf(text);
    plain = reportOf(readings);
  });

  it('does not depend on the order of the lines', async () => {
    const [header = '', ...lines] = text.trim().split('\n');
    const random = new Random(17);
    const shuffled = lines
      .map((line) => ({ line, at: random.uniform() }))
      .sort((a, b) => a.at - b.at)
      .map(({ line }) => line);
    expect(reportOf(await readingsOf([header, ...shuffled].join('\n')))).toEqual(plain);
  });

  it('is the same after the file is written and read again', async () => {
    expect(reportOf(await readingsOf(writeMeasurementFile(readings)))).toEqual(plain);
  });

  it('takes a constant added to all heights and to the clearance for what it is: no deviation, no change', () => {
    const lifted = readings.map((reading) => ({
      ...reading,
      clearance: reading.clearance + 1000,
      value: reading.quantity === 'height' ? reading.value + 1000 : reading.value,
    }));
    const report = reportOf(lifted);
    expect(report.first_time_right).toEqual(plain.first_time_right);
    report.technicians.forEach((technician, i) => {
      expect(technician.repeatability.sd_mm).toBeCloseTo(
        plain.technicians[i]?.repeatability.sd_mm ?? Number.NaN,
        9,
      );
    });
    // A clearance of another size makes its slips of another size: only there may a probability move.
    expect(largestDifference(plain, report)).toBeLessThan(0.03);
  });

  it('mirrors when left and right are exchanged', () => {
    const letters = new Map<string, string>();
    for (const { quantity, point, side, sheet, station } of readings) {
      if (quantity !== 'height') continue;
      const twin = readings.find(
        (other) =>
          other.quantity === 'height' &&
          other.sheet === sheet &&
          other.station === station &&
          other.side !== side,
      );
      if (twin) letters.set(`${sheet} ${point}`, twin.point);
    }
    const mirrored = readings.map((reading): Reading => {
      const { quantity, sheet, point, side } = reading;
      const other = (name: string): string => letters.get(`${sheet} ${name}`) ?? name;
      if (quantity === 'height') return { ...reading, point: other(point), side: side === 'L' ? 'R' : 'L' };
      return { ...reading, point: point.split('-').map(other).join('-') };
    });
    expect(largestDifference(plain, reportOf(mirrored), true)).toBeLessThan(1e-3);
  });
});
