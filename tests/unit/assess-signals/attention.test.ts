import { describe, expect, it } from 'vitest';
import { attention, scorerOf, type Series, type RateSeries, type SettingSeries } from '@/lib/assess/signals';
import { collapse } from '@/lib/stats';
import { Random } from '@/tests/simulation/random';

const month = (i: number) => `${2023 + Math.floor(i / 12)}-${String((i % 12) + 1).padStart(2, '0')}`;

function rates(
  random: Random,
  months: number,
  chance: (i: number) => number,
  name: string | null = null,
): RateSeries {
  return {
    what: 'right-first-time',
    subject: name === null ? { kind: 'shop', name } : { kind: 'technician', name },
    periods: Array.from({ length: months }, (_, i) => ({
      period: month(i),
      jobs: 20,
      right: Array.from({ length: 20 }).filter(() => random.chance(chance(i))).length,
    })),
  };
}

function settings(
  random: Random,
  months: number,
  what: SettingSeries['what'],
  of: (i: number) => [number, number],
): SettingSeries {
  return {
    what,
    subject: { kind: 'gauge', name: 'C1' },
    periods: Array.from({ length: months }, (_, i) => {
      const { n, mean, ss } = collapse(Array.from({ length: 8 }, () => random.normal(...of(i))));
      return { period: month(i), n, mean, ss };
    }),
  };
}

/** Scatters of 30 settings a month. */
const ofErrors = (months: number, error: () => number): SettingSeries => ({
  what: 'setting-scatter',
  subject: { kind: 'technician', name: 'T1' },
  periods: Array.from({ length: months }, (_, i) => {
    const { n, mean, ss } = collapse(Array.from({ length: 30 }, error));
    return { period: month(i), n, mean, ss };
  }),
});

function scoresOf(series: Series): (number | null)[] {
  const scorer = scorerOf(series);
  return series.periods.map((_, i) => {
    const score = scorer.score(i);
    scorer.learn(i);
    return score;
  });
}

describe('scores of periods', () => {
  it.each(['setting-bias', 'setting-scatter'] as const)(
    'of %s are standard normal and independent where nothing changes',
    (what) => {
      const random = new Random(8);
      const rows = Array.from({ length: 400 }, () =>
        scoresOf(settings(random, 12, what, () => [0.3, 0.8])).flatMap((z) => (z === null ? [] : [z])),
      );
      const all = rows.flat();
      const mean = all.reduce((sum, z) => sum + z, 0) / all.length;
      const square = all.reduce((sum, z) => sum + z * z, 0) / all.length;
      const lag = rows.flatMap((row) => row.slice(1).map((z, i) => z * (row[i] ?? 0)));
      expect(all.length).toBe(400 * 11);
      expect(Math.abs(mean)).toBeLessThan(3 / Math.sqrt(all.length));
      // A scatter's, beside the spread of a few earlier ones, are so nearly.
      expect(Math.abs(square - 1)).toBeLessThan(
        what === 'setting-bias' ? 3 * Math.sqrt(2 / all.length) : 0.1,
      );
      expect(Math.abs(lag.reduce((sum, z) => sum + z, 0) / lag.length)).toBeLessThan(
        3 / Math.sqrt(lag.length),
      );
    },
  );

  it('of counts are no wider than standard normal', () => {
    const random = new Random(9);
    const all = Array.from({ length: 300 }, () => scoresOf(rates(random, 12, () => 0.8)))
      .flat()
      .flatMap((z) => (z === null ? [] : [z]));
    const square = all.reduce((sum, z) => sum + z * z, 0) / all.length;
    expect(square).toBeGreaterThan(0.85);
    expect(square).toBeLessThan(1.05);
  });
});

describe('attention', () => {
  it('gives false alarms no oftener than stated: 12 series, one in 24 periods', () => {
    const random = new Random(17);
    let alarms = 0;
    let periods = 0;
    for (let shop = 0; shop < 120; shop++) {
      const series = Array.from({ length: 12 }, (_, i) => rates(random, 24, () => 0.8, `T${i}`));
      const { charts } = attention(series);
      // Until the first alarm of a chart: later ones are the same alarm.
      alarms += charts.filter(({ points }) => points.some(({ alarm }) => alarm !== null)).length;
      periods += 24;
    }
    expect(alarms / periods).toBeLessThan(1 / 24);
  });

  it('nor where settings have long tails, as they have with small mis-sets among them', () => {
    const random = new Random(19);
    const wild = () => (random.chance(0.05) ? 3 : 0.8);
    let alarms = 0;
    let lists = 0;
    for (let shop = 0; shop < 40; shop++) {
      const series = Array.from({ length: 8 }, () => ofErrors(60, () => random.normal(0, wild())));
      const { charts } = attention(series);
      alarms += charts.filter(({ points }) => points.some(({ alarm }) => alarm !== null)).length;
      lists += 60;
    }
    expect(alarms / lists).toBeLessThan(1 / 24);
  });

  it('finds a rate that fell, when, by how much, and names the next step', () => {
    const random = new Random(5);
    const series = [rates(random, 24, (i) => (i < 15 ? 0.85 : 0.55)), rates(random, 24, () => 0.8, 'T2')];
    const { signals, quiet, design } = attention(series);
    expect(signals).toHaveLength(1);
    const [signal] = signals;
    expect(signal).toMatchObject({ what: 'right-first-time', direction: 'worse', subject: { kind: 'shop' } });
    expect([month(14), month(15), month(16)]).toContain(signal?.began?.period);
    expect(signal?.size?.low).toBeLessThan(-0.3 + 0.05);
    expect(signal?.size?.high).toBeGreaterThan(-0.3 - 0.05);
    expect(signal?.evidence).toMatch(
      /^Right first time, the shop: \d+ of \d+ from 2024-0\d .* before; -\d+ points/,
    );
    expect(signal?.next).toMatch(/not right/);
    expect(quiet).toBeNull();
    expect(design).toMatchObject({ charts: 4, runLength: 96, falseAlarmJobs: 480 });
  });

  it('takes a gauge that was bent out of service', () => {
    const random = new Random(6);
    const bent = settings(random, 18, 'setting-bias', (i) => [i < 12 ? 0 : 1.2, 0.8]);
    const [signal] = attention([bent]).signals;
    expect(signal).toMatchObject({ direction: 'worse', size: { unit: 'mm' } });
    expect(signal?.next).toMatch(/out of service until it is verified/);
  });

  it('calls a mean that came nearer to zero better, whatever its first half was like', () => {
    const random = new Random(8);
    const mended = settings(random, 18, 'setting-bias', (i) => [i < 6 ? -1 : 0.1, 0.8]);
    const { signals } = attention([mended], { recent: 18 });
    expect(signals).toHaveLength(1);
    expect(signals[0]).toMatchObject({ direction: 'better', size: { unit: 'mm' } });
  });

  it('calls a scatter that fell an improvement, with the ratio and its interval', () => {
    const random = new Random(7);
    const trained = settings(random, 24, 'setting-scatter', (i) => [0, i < 14 ? 1.2 : 0.5]);
    const [signal] = attention([trained]).signals;
    expect(signal).toMatchObject({ direction: 'better', size: { unit: 'ratio' } });
    expect(signal?.size?.high).toBeLessThan(0.7);
    expect(signal?.next).toMatch(/keep it/);
  });

  it('never calls better what it shows to be worse, however often a series changed', () => {
    const random = new Random(31);
    let shown = 0;
    for (let i = 0; i < 150; i++) {
      const [first, second] = [10 + random.uniform() * 20, 35 + random.uniform() * 20];
      const [a, b, c] = [random.uniform(), random.uniform(), random.uniform()];
      const of = (at: number) => (at < first ? a : at < second ? b : c);
      const series = [
        settings(random, 60, 'setting-scatter', (at) => [0, 0.5 + of(at)]),
        rates(random, 60, (at) => 0.3 + 0.6 * of(at)),
      ];
      for (const { what, direction, size } of attention(series, { recent: 12 }).signals) {
        if (size === null) continue;
        const better = what === 'right-first-time' ? size.value > 0 : size.value < 1;
        expect(direction).toBe(better ? 'better' : 'worse');
        shown++;
      }
    }
    expect(shown).toBeGreaterThan(50);
  });

  it('is quiet and says what that means; too little history is said too', () => {
    const random = new Random(4);
    expect(attention([rates(random, 20, () => 0.8)]).quiet).toMatch(
      /^Nothing stands out of chance in one series/,
    );
    expect(attention([rates(random, 1, () => 0.8)]).quiet).toMatch(/too little history/);
    expect(attention([])).toMatchObject({ signals: [] });
  });

  it('forgets an alarm that passed', () => {
    const random = new Random(12);
    const dip = rates(random, 40, (i) => (i > 14 && i < 20 ? 0.3 : 0.85));
    const { charts, signals } = attention([{ ...dip, periods: dip.periods.slice(0, 20) }]);
    expect(signals).toHaveLength(1);
    expect(charts[0]?.points.some(({ alarm }) => alarm === 'down')).toBe(true);
    expect(attention([dip]).signals.filter(({ direction }) => direction === 'worse')).toEqual([]);
  });
});
