import { describe, expect, it } from 'vitest';
import { grouped } from '@/lib/measure/grouped';
import { mean, standardDeviation } from 'simple-statistics';
import { demoShop, demoTruth } from '@/seed';

const truth = demoTruth();
const { readings } = demoShop();
const counts = new Map(
  [...grouped(readings, (r) => `${r.job} ${r.setup} ${r.quantity} ${r.point} ${r.side ?? ''}`)].map(
    ([key, group]) => [
      key,
      { n: group.length, mean: mean(group.map((r) => r.value - r.nominal - r.clearance)) },
    ],
  ),
);
const heights = truth.jobs.flatMap((job) =>
  job.rounds.flatMap((round) =>
    round.heights.map((height) => ({
      job: job.job,
      ...height,
      read: counts.get(`${job.job} ${height.setup} height ${height.point} ${height.side}`),
    })),
  ),
);
/** What a reading holds beyond its parts, as it would scatter in a single reading. */
const noise = (list: typeof heights, expected: (height: (typeof heights)[number]) => number) =>
  list.map((height) => (height.deviation - expected(height)) * Math.sqrt(height.read?.n ?? NaN));

describe('demoTruth', () => {
  it('knows the deviation of every height that is in the readings', () => {
    expect(heights.length).toBe([...counts.keys()].filter((key) => key.includes(' height ')).length);
    for (const height of heights) expect(height.read?.mean).toBeCloseTo(height.deviation, 9);
  });

  it('leaves nothing but the hand’s reading noise when gauge part, body part and biases are taken away', () => {
    const others = heights.filter((height) => !height.zero);
    for (const { code, hands } of truth.technicians) {
      const own = noise(
        others.filter((height) => height.technician === code),
        (height) => height.gaugePart + height.bodyPart + height.bias,
      );
      const sd = hands[0]?.hand.repeatability ?? NaN;
      expect(Math.abs(mean(own)) / (sd / Math.sqrt(own.length)), code).toBeLessThan(4);
      // Rounding to the scale adds a little to the scatter; reading to 0 and 5 adds more.
      expect(standardDeviation(own) / sd, code).toBeGreaterThan(0.9);
      expect(standardDeviation(own) / sd, code).toBeLessThan(1.15);
    }
  });

  it('shows at the zero stations only reading noise, however the gauge was set', () => {
    const zeros = heights.filter((height) => height.zero);
    expect(zeros.some((height) => Math.abs(height.gaugePart) > 10)).toBe(true);
    const all = noise(zeros, () => 0);
    expect(Math.abs(mean(all))).toBeLessThan(0.03);
    expect(Math.max(...all.map(Math.abs))).toBeLessThan(5);
  });

  it('carries the zero gauges’ settings on the straight line through both, from the datum last hung', () => {
    for (const round of truth.jobs.flatMap((job) => job.rounds)) {
      const zeros = round.heights.filter((height) => height.zero);
      const [xa, xb] = [...new Set(zeros.map((height) => height.station))].sort((a, b) => a - b);
      if (xa === undefined || xb === undefined) throw new Error('a round without a datum');
      for (const height of round.heights.filter((one) => !one.zero)) {
        const setting = (station: number) => {
          const hung = zeros
            .filter((z) => z.station === station && z.side === height.side && z.takenAt < height.takenAt)
            .sort((a, b) => a.takenAt - b.takenAt)
            .at(-1);
          return (hung?.scatter ?? NaN) + (hung?.gross ?? NaN);
        };
        const slope = (setting(xb) - setting(xa)) / (xb - xa);
        const line = setting(xa) + slope * (height.station - xa);
        expect(height.gaugePart).toBeCloseTo(height.scatter + height.gross - line, 6);
      }
    }
  });

  it('has the same body behind every hanging at one point in a round', () => {
    for (const round of truth.jobs.flatMap((job) => job.rounds)) {
      for (const group of grouped(round.heights, (h) => `${h.point} ${h.side}`).values()) {
        expect(new Set(group.map((h) => h.bodyPart.toFixed(9))).size).toBe(1);
      }
    }
  });

  it('calls a part by its size against the tolerance', () => {
    const tolerance = new Map(readings.map((r) => [r.job, r.tolerance]));
    for (const height of heights) {
      const limit = tolerance.get(height.job) ?? NaN;
      const gauge = Math.abs(height.gaugePart) > limit;
      const body = Math.abs(height.bodyPart) > limit;
      expect(height.cause).toBe(gauge && body ? 'both' : gauge ? 'gauge' : body ? 'body' : 'neither');
    }
  });

  it('has every kind of setting fault in it', () => {
    const faults = new Set(heights.map((height) => height.fault));
    expect([...faults].filter((fault) => fault !== null).sort()).toEqual([
      'another mark',
      'another row',
      'both hangers',
      'clearance left out',
      'clearance twice',
      'digits exchanged',
      'left hanger',
      'right hanger',
      'sides exchanged',
      'tape',
    ]);
  });
});
