import { describe, expect, it } from 'vitest';
import type { RoundVerdict } from '@/lib/assess';
import { clusterOf } from '@/lib/assess/habits/moments';
import { hung, length, reading, tallied, tallyOf } from './shop';

const verdict = (change: Partial<RoundVerdict>): RoundVerdict => ({
  job: 'J1',
  stage: 'before',
  attempt: 1,
  decidable: true,
  why: null,
  pZeroMisset: 0,
  datum: [],
  heights: [],
  centerline: [],
  leftOut: 0,
  nextChecks: [],
  ...change,
});

const height = (
  setup: string,
  technician: string,
  signature: string | null,
  change: Partial<RoundVerdict['heights'][number]> = {},
): RoundVerdict['heights'][number] => ({
  setup,
  gauge: 'C1',
  technician,
  point: 'A',
  side: 'L',
  station: 0,
  zero: false,
  deviation: 0,
  p: { neither: 1, gauge: 0, body: 0, both: 0 },
  misset: 0,
  body: 0,
  signature,
  ...change,
});

describe('slips', () => {
  const readings = [...hung(1, -100, -100), ...hung(2, 0, 0, { technician: 'T2' }), ...hung(3, -100, -100)];

  it('count a round once however often the clearance is left out in it, for whom it was', () => {
    const slips = verdict({
      heights: [
        height('B1-01', 'T1', 'clearance left out'),
        height('B1-02', 'T2', null),
        height('B1-03', 'T1', 'clearance added twice'),
      ],
    });
    const tallies = tallied(readings, [slips]);
    expect(tallies.get('T1')?.rounds['clearance-forgotten']).toEqual({ n: 1, x: 1 });
    expect(tallies.get('T2')?.rounds['clearance-forgotten']).toEqual({ n: 1, x: 0 });
    expect(tallies.get('T1')?.shown['clearance-forgotten']?.map(({ label }) => label)).toEqual([
      'J1/B1-03',
      'J1/B1-01',
    ]);
  });

  it('are not counted where the round has no clearance, is not judged or not decided', () => {
    const slip = height('B1-01', 'T1', 'another fixed mark');
    const without = hung(1, 0, 0, { clearance: 0 });
    const noClearance = tallied(without, [verdict({ heights: [slip] })]).get('T1');
    expect(noClearance?.rounds['clearance-forgotten'].n).toBe(0);
    expect(noClearance?.rounds['another-mark']).toEqual({ n: 1, x: 1 });
    expect(tallied(readings, []).get('T1')?.rounds['another-mark'].n).toBe(0);
    const open = verdict({ heights: [slip], decidable: false });
    expect(tallied(readings, [open]).get('T1')?.rounds['another-mark'].n).toBe(0);
  });

  it('of a zero gauge count where it is more likely mis-set than not', () => {
    const zero = { zero: true, p: { neither: 0.3, gauge: 0.6, body: 0, both: 0.1 } };
    const said = verdict({ heights: [height('B1-01', 'T1', null, zero), height('B1-03', 'T1', null)] });
    expect(tallied(readings, [said]).get('T1')?.rounds['careless-zero']).toEqual({ n: 1, x: 1 });
  });
});

describe('hangings', () => {
  it('make one cluster of a job: left less right, large differences clipped at 5 mm', () => {
    const tally = tallyOf([...hung(1, -1, 1), ...hung(2, 9, 0, { station: 500 })]);
    expect(tally.means['low-hanger'].all).toEqual(clusterOf(2, -2 + 5));
    expect(tally.means['low-hanger'].by).toEqual({ C1: clusterOf(2, 3) });
  });

  it('leave out a side that more likely than not shows damage', () => {
    const damaged = { p: { neither: 0.2, gauge: 0, body: 0.8, both: 0 } };
    const said = verdict({ heights: [height('B1-01', 'T1', null, damaged)] });
    const tally = tallied(hung(1, 4, 1), [said]).get('T1');
    expect(tally?.means['low-hanger'].all.n).toBe(0);
    expect(tally?.means['one-gauge'].all).toEqual(clusterOf(1, 1));
  });

  it('show a drift as the slope on the order of setups; a station hung again does not count twice', () => {
    const rising = [0, 1, 2].flatMap((k) => hung(k + 1, k, k, { station: 100 * k }));
    const again = hung(9, 4, 4, { station: 0 });
    const { s, n } = tallyOf([...rising, ...again]).means['drift-in-round'].all;
    expect(s / n).toBeCloseTo(1, 12);
  });

  it('count a height out of tolerance as left where nobody hangs the station again', () => {
    const out = hung(1, 5, 0);
    expect(tallyOf(out).means['no-rehang'].all).toEqual(clusterOf(1, 1));
    const again = tallied([...out, ...hung(2, 0, 0, { technician: 'T2' })]);
    expect(again.get('T1')?.means['no-rehang'].all).toEqual(clusterOf(1, 0));
    expect(again.get('T2')?.means['no-rehang'].all.n).toBe(0);
    // The edge is within.
    expect(tallyOf(hung(1, 3, -3)).means['no-rehang'].all.n).toBe(0);
  });
});

describe('order of work', () => {
  it('shows heights before the center section, and heights without it', () => {
    expect(tallyOf([length(1), ...hung(2, 0, 0)]).rounds['heights-first']).toEqual({ n: 1, x: 0 });
    expect(tallyOf([...hung(1, 0, 0), length(2)]).rounds['heights-first']).toEqual({ n: 1, x: 1 });
    const elsewhere = length(1, { section: 'front' });
    expect(tallyOf([elsewhere, ...hung(2, 0, 0)]).rounds['heights-first']).toEqual({ n: 1, x: 1 });
  });

  it('says nothing where both carry the same time', () => {
    expect(tallyOf([...hung(1, 0, 0), length(1, { setup: 'B1-09' })]).rounds['heights-first'].n).toBe(0);
  });
});

describe('lengths', () => {
  it('with pointers 40 mm apart in length have the slope of 40 mm on 1 / length, by the geometry of the bar', () => {
    // True length L, tips 40 mm apart across the bar: the scale shows the leg along the bar.
    const readings = [900, 1200, 1500, 2000].map((nominal, i) =>
      length(i + 1, {
        gaugeKind: 'digital-tram',
        point: `C-${'EFGH'[i] ?? ''}`,
        nominal,
        value: Math.sqrt(nominal ** 2 - 40 ** 2),
      }),
    );
    const { s, n } = tallyOf(readings).means['unequal-pointers'].all;
    expect(Math.sqrt(-2000 * (s / n))).toBeCloseTo(40, 1);
  });

  it('by tape are no sign of the pointers', () => {
    const tally = tallyOf([length(1, { gaugeKind: 'tape' }), length(2, { gaugeKind: 'tape', nominal: 900 })]);
    expect(tally.lengths.n).toBe(0);
  });
});

describe('digits', () => {
  it('are those of the first reading of each dimension', () => {
    const readings = [
      reading({ value: 351.5 }),
      reading({ value: 350.7, repeat: 2 }),
      reading({ value: 350.7, repeat: 3 }),
      reading({ value: 349.3, setup: 'B1-02', station: 500, point: 'C' }),
    ];
    const tally = tallyOf(readings);
    expect(tally.digits.heaped).toEqual({ n: 2, x: 1 });
    expect(tally.digits.tenths).toEqual([0, 0, 0, 1, 0, 1, 0, 0, 0, 0]);
  });

  it('leave the sheet value itself out, since who is drawn to it need not prefer its digit', () => {
    expect(tallyOf([reading({ value: 350 })]).digits.heaped.n).toBe(0);
  });

  it('go by what the gauge is read in: halves on a tram, whole millimetres on a tape', () => {
    const half = tallyOf([length(1, { value: 1401 }), length(2, { value: 1399.5, point: 'C-F' })]);
    expect(half.digits.halves).toEqual({ n: 2, x: 1 });
    const whole = tallyOf([length(1, { value: 1405, nominal: 1402, gaugeKind: 'tape' })]);
    expect(whole.digits.whole[5 * 2 + 3]).toBe(1);
  });

  it('of a gauge that is read finer than its kind are left out', () => {
    expect(tallyOf([length(1, { value: 1400.3 })]).digits.halves.n).toBe(0);
  });
});

describe('repeats', () => {
  it('are alike where all readings show one value, the sheet value aside', () => {
    const twice = (values: number[], setup: string) =>
      values.map((value, i) => reading({ value, repeat: i + 1, setup, takenAt: 1e12 + i }));
    const tally = tallyOf([
      ...twice([351.2, 351.2], 'a'),
      ...twice([350.1, 350.4], 'b'),
      ...twice([350, 350], 'c'),
    ]);
    expect(tally.repeats.tenths.sets).toEqual({ 2: { sets: 2, alike: 1 } });
    expect(tally.repeats.tenths.df).toBe(2);
    expect(tally.repeats.tenths.ss).toBeCloseTo(0.045, 12);
  });
});
