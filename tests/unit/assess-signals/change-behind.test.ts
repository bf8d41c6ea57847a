import { describe, expect, it } from 'vitest';
import { attention, ONE_SERIES, type SettingSeries } from '@/lib/assess/signals';

const month = (i: number) => `${2016 + Math.floor(i / 12)}-${String((i % 12) + 1).padStart(2, '0')}`;

/** Scatters of exactly these sds, eight settings a month. */
const scatters = (months: number, sd: (i: number) => number): SettingSeries => ({
  what: 'setting-scatter',
  subject: { kind: 'technician', name: 'T1' },
  periods: Array.from({ length: months }, (_, i) => ({
    period: month(i),
    n: 8,
    mean: 0,
    ss: 7 * sd(i) ** 2,
  })),
});

/** It rose after five years, and fell by less, and for a shorter time, after nine. */
const roseAndFell = scatters(120, (i) => (i < 60 ? 0.8 : i < 108 ? 1.2 : 0.9));

describe('the change behind an alarm', () => {
  it('is the last one to its side, beside what lies between it and the change before', () => {
    const change = ONE_SERIES.change(roseAndFell, 'down');
    expect(change).toMatchObject({ at: 108, side: 'down', since: month(60) });
    expect(change?.began?.period).toBe(month(108));
    expect(change?.before).toBe('1.20 mm (384 setups)');
    expect(change?.after).toBe('0.90 mm (96 setups)');
    expect(change?.size?.value).toBeCloseTo(0.75, 10);
  });

  it('is the clearest of all where no alarm asks for a side', () => {
    expect(ONE_SERIES.change(roseAndFell, null)).toMatchObject({ at: 60, side: 'up', since: null });
  });

  it('is not told where all went to the other side', () => {
    const rising = scatters(60, (i) => (i < 30 ? 0.6 : 1.2) + 0.001 * i);
    expect(ONE_SERIES.change(rising, 'down')).toBeNull();
  });

  it('counts each look into what chance alone would show', () => {
    const later = { ...roseAndFell, periods: roseAndFell.periods.slice(60) };
    const alone = ONE_SERIES.change(later, 'down');
    const change = ONE_SERIES.change(roseAndFell, 'down');
    expect(change?.p).toBeGreaterThan(0);
    expect(change?.p).toBeCloseTo(2 * (alone?.p ?? 0), 12);
  });

  it('is told with the time that it is held against', () => {
    const [signal] = attention([roseAndFell], {}, { ...ONE_SERIES, chart: alarmed }).signals;
    expect(signal).toMatchObject({ direction: 'better', size: { unit: 'ratio' } });
    expect(signal?.evidence).toMatch(/ against 1\.20 mm \(384 setups\) from 2021-01 until then; 0\.75 times/);
  });
});

/** A chart that stands below its limit now, whatever came before. */
const alarmed: typeof ONE_SERIES.chart = (series) => ({
  series,
  points: series.periods.map(({ period }, i) => ({
    ...{ period, score: 0, ewma: 0, upper: 0, lower: 0 },
    alarm: i === series.periods.length - 1 ? 'down' : null,
  })),
  ...{ ewmaLimit: 1, cusumLimit: 5, why: null },
});
