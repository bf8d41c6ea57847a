import { describe, expect, it } from 'vitest';
import { collapse, readMeasurementFile, type Reading } from '@/lib/measure';
import { file, height, length, ROUND } from './lines';

async function readingsOf(...lines: string[]): Promise<Reading[]> {
  const { readings, faults } = await readMeasurementFile(file(lines));
  expect(faults).toEqual([]);
  return readings;
}

const at = (minute: number) => `2025-01-06T08:${String(minute).padStart(2, '0')}:00Z`;

describe('collapse', () => {
  it('keeps count, mean and sum of squares of the deviations', async () => {
    const values = ['300.5', '301.1', '300.2'];
    const lines = values.map((value_mm, i) => height({ repeat: String(i + 1), value_mm, taken_at: at(i) }));
    const [job] = collapse(await readingsOf(...lines, ...ROUND.slice(1)));
    const observation = job?.rounds[0]?.setups.find(({ label }) => label === '1')?.observations[0];
    // (0.5 + 1.1 + 0.2) / 3 = 0.6; 0.01 + 0.25 + 0.16 = 0.42
    expect(observation?.n).toBe(3);
    expect(observation?.deviation).toBeCloseTo(0.6, 12);
    expect(observation?.ss).toBeCloseTo(0.42, 12);
    expect(observation?.takenAt).toBe(Date.parse(at(0)));
  });

  it('rounds stand before 1, before 2, after 1, after 2, whatever their times', async () => {
    const rounds = [
      ['after', '2'],
      ['before', '2'],
      ['after', '1'],
      ['before', '1'],
    ].map(([stage = '', attempt = ''], i) => length({ stage, attempt, setup: `s${i}`, taken_at: at(i) }));
    const [job] = collapse(await readingsOf(...rounds));
    expect(job?.rounds.map(({ stage, attempt }) => `${stage} ${attempt}`)).toEqual([
      'before 1',
      'before 2',
      'after 1',
      'after 2',
    ]);
  });

  it('setups stand in the order they were hung, then by label', async () => {
    const setups = [
      ['b', 5],
      ['c', 1],
      ['a', 5],
    ] as const;
    const lines = setups.map(([setup, minute]) => length({ setup, taken_at: at(minute) }));
    const [job] = collapse(await readingsOf(...lines));
    expect(job?.rounds[0]?.setups.map(({ label }) => label)).toEqual(['c', 'a', 'b']);
  });

  it('the straight length and the diagonal under one name stay apart', async () => {
    const both = ROUND.flatMap((line) => [line, line.replace(',L,', ',R,')]);
    const ab = { point: 'A-B', setup: 's' };
    const readings = await readingsOf(
      ...both,
      length({ ...ab, nominal_mm: '1500', value_mm: '1501' }),
      length({ ...ab, setup: 'd', nominal_mm: '1800', value_mm: '1799' }),
    );
    const observations = collapse(readings).flatMap((job) => job.rounds[0]?.setups ?? []);
    const lengths = observations.flatMap((s) => s.observations).filter((o) => o.quantity === 'length');
    expect(lengths.map(({ nominal, deviation }) => [nominal, deviation])).toEqual([
      [1800, -1],
      [1500, 1],
    ]);
  });

  it('the clearance of a round is that of its heights', async () => {
    const [job] = collapse(await readingsOf(length(), ...ROUND));
    expect(job?.rounds[0]?.clearance).toBe(100);
  });
});
