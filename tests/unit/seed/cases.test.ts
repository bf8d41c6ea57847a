import { describe, expect, it } from 'vitest';
import { demoShop, demoTruth } from '@/seed';

/** The single cases that stories.md sends a reader to. */
const { jobs } = demoTruth();

function heightsOf(job: string, stage: 'before' | 'after', attempt: number) {
  const round = jobs
    .find((one) => one.job === job)
    ?.rounds.find((one) => one.stage === stage && one.attempt === attempt);
  return round?.heights ?? [];
}

describe('the cases in stories.md', () => {
  it('K4105: a zero gauge 12.9 mm wrong reads well itself and puts every other station out', () => {
    const heights = heightsOf('K4105', 'after', 1);
    const wrong = heights.filter((height) => height.zero && height.fault !== null);
    expect(wrong.map((height) => Number(height.gross.toFixed(1)))).toEqual([12.9, 12.9]);
    for (const height of wrong) expect(Math.abs(height.deviation)).toBeLessThan(1);
    for (const height of heights.filter((one) => !one.zero))
      expect(Math.abs(height.deviation)).toBeGreaterThan(3);
  });

  it('K4111: the clearance of 120 mm left out on both sides', () => {
    const wrong = heightsOf('K4111', 'after', 2).filter((height) => height.fault === 'clearance left out');
    expect(wrong.map((height) => [height.side, height.gross])).toEqual([
      ['L', -120],
      ['R', -120],
    ]);
  });

  it('K4128: a tape misread by 10 mm on one side, gone when hung again', () => {
    const heights = heightsOf('K4128', 'before', 1);
    const [wrong] = heights.filter((height) => height.fault === 'tape');
    expect(wrong).toMatchObject({ gross: 10, superseded: true });
    const again = heights.filter((h) => h.point === wrong?.point && h.side === wrong.side).at(-1);
    expect(Math.abs(again?.deviation ?? NaN)).toBeLessThan(3);
  });

  it('K4149: two digits exchanged on one side', () => {
    const wrong = heightsOf('K4149', 'after', 2).filter((height) => height.fault === 'digits exchanged');
    expect(wrong.map((height) => height.gross)).toEqual([54]);
  });

  it('K4146: zero gauges hung again, and every other gauge after them', () => {
    const heights = heightsOf('K4146', 'before', 1);
    const again = heights.filter((height) => height.zero && !height.superseded);
    const since = Math.max(...again.map((height) => height.takenAt));
    const points = new Set(heights.filter((height) => !height.zero).map((height) => height.point));
    expect(again).toHaveLength(4);
    for (const point of points) {
      expect(
        heights.some((height) => height.point === point && height.takenAt > since),
        point,
      ).toBe(true);
    }
  });

  it('K4457 to K4460 are still in repair', () => {
    const open = jobs.filter((job) => job.rightFirstTime === null).map((job) => job.job);
    expect(open).toEqual(expect.arrayContaining(['K4457', 'K4458', 'K4459', 'K4460']));
  });

  it('April has the lowest rate of the months but September, and nothing was done differently', () => {
    const months = new Map<string, boolean[]>();
    for (const job of jobs) {
      const first = job.rounds.find((round) => round.stage === 'after');
      if (first === undefined || job.rightFirstTime === null) continue;
      const month = new Date(first.takenAt).toISOString().slice(0, 7);
      months.set(month, [...(months.get(month) ?? []), job.rightFirstTime.recorded]);
    }
    const rates = [...months].map(
      ([month, right]) => [month, right.filter(Boolean).length / right.length] as const,
    );
    const lowest = rates.sort(([, a], [, b]) => a - b).slice(0, 2);
    expect(lowest.map(([month]) => month)).toEqual(['2026-09', '2026-04']);
  });

  it('amount to about 39,000 readings', () => {
    expect(Math.abs(demoShop().readings.length - 39_000)).toBeLessThan(1_000);
  });
});
