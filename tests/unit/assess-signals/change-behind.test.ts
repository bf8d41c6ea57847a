import { describe, expect, it } from 'vitest';
import { varianceRoot } from '@/lib/stats';
import { expectRelative } from '@/tests/reference/stats/closeness';
import {
  attention,
  ONE_SERIES,
  type Series,
  type SettingSeries,
  type SignalChart,
} from '@/lib/assess/signals';

const month = (i: number) => `${2016 + Math.floor(i / 12)}-${String((i % 12) + 1).padStart(2, '0')}`;

/** What eight settings of sd 1 have for a sum of squares, by their mean root. */
const OF_ONE = 7 / (varianceRoot({ df: 7, ss: 7 })?.root ?? NaN) ** 3;

/** Scatters of exactly these sds, eight settings a month. */
const scatters = (months: number, sd: (i: number) => number): SettingSeries => ({
  what: 'setting-scatter',
  subject: { kind: 'technician', name: 'T1' },
  periods: Array.from({ length: months }, (_, i) => ({
    period: month(i),
    n: 8,
    mean: 0,
    ss: OF_ONE * sd(i) ** 2,
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
    const whole = scatters(120, (i) => (i < 60 ? 0.8 : i < 108 ? 1.2 : 0.9) * (1 + 0.3 * Math.cos(2 * i)));
    const later = { ...whole, periods: whole.periods.slice(60) };
    const alone = ONE_SERIES.change(later, 'down');
    expect(alone).toMatchObject({ at: 48, since: null });
    expect(alone?.p).toBeGreaterThan(0);
    const change = ONE_SERIES.change(whole, 'down');
    expect(change).toMatchObject({ at: 108, since: month(60) });
    expectRelative(change?.p, 2 * (alone?.p ?? NaN), 1e-9);
  });

  it('is told with the time that it is held against', () => {
    const [signal] = attention([roseAndFell], {}, { ...ONE_SERIES, chart: alarmed }).signals;
    expect(signal).toMatchObject({ direction: 'better', size: { unit: 'ratio' }, noticed: month(119) });
    expect(signal?.evidence).toMatch(/ against 1\.20 mm \(384 setups\) from 2021-01 until then; 0\.75 times/);
  });

  it('was not noticed before it began, though an alarm may have stood by chance', () => {
    const chart = (series: Series) => alarmedFrom(series, 100);
    const [signal] = attention([roseAndFell], {}, { ...ONE_SERIES, chart }).signals;
    expect(signal).toMatchObject({ noticed: month(108), began: { period: month(108) } });
  });
});

/** A chart that stands below its limit now, whatever came before. */
const alarmed: typeof ONE_SERIES.chart = (series) => alarmedFrom(series, series.periods.length - 1);

const alarmedFrom = (series: Series, from: number): SignalChart => ({
  series,
  points: series.periods.map(({ period }, i) => ({
    ...{ period, score: 0, ewma: 0, upper: 0, lower: 0 },
    alarm: i >= from ? 'down' : null,
  })),
  ...{ ewmaLimit: 1, cusumLimit: 5, why: null },
});
