import { describe, expect, it } from 'vitest';
import {
  checkRows,
  emptyLength,
  emptyPoint,
  expandRows,
  fitOf,
  readTyped,
  remarksAt,
  type LengthRow,
  type PointRow,
  type SheetRows,
} from '@/lib/measure/sheet';

const point = (letter: string, change: Partial<PointRow> = {}): PointRow => ({
  ...{ letter, side: 'both', description: null, feature: null, section: 'center', station: 1000 },
  ...{ height: 240, halfWidth: 400, zero: false, tolerance: 3, centerline: null },
  ...change,
});
const length = (from: string, to: string, nominal: number, change: Partial<LengthRow> = {}): LengthRow => ({
  ...{ from, to, kind: null, nominal, tolerance: 3 },
  ...change,
});

/** Invented. 3-4-5 triangles: K to N is 1500 along and 0 or 800 across, M to N 1200 along and 900 or 0 up. */
const POINTS = [
  point('A', { section: 'front', station: 0 }),
  point('K', { zero: true }),
  point('N', { station: 2500, zero: true }),
  point('T', { section: 'rear', station: 3700, height: 1140 }),
];
const sheet = (lengths: LengthRow[], points: PointRow[] = POINTS): SheetRows => ({ points, lengths });
const codes = (rows: SheetRows) => checkRows(rows).map(({ level, code }) => `${level} ${code}`);
const only = (rows: SheetRows) => {
  const [first, ...more] = checkRows(rows);
  expect(more).toEqual([]);
  return first;
};
const instead = (letter: string, change: Partial<PointRow>) =>
  POINTS.map((one) => (one.letter === letter ? { ...one, ...change } : one));

describe('a length', () => {
  it('that is the distance of its ends, straight or across, passes', () => {
    expect(codes(sheet([length('K', 'N', 1500), length('K', 'N', 1700)]))).toEqual([]);
    expect(codes(sheet([length('K.L', 'N.R', 1700, { kind: 'diagonal' })]))).toEqual([]);
  });

  it('may be stated from point to point or parallel to the datum, and which of them is told', () => {
    const fit = (nominal: number) => fitOf(length('N', 'T', nominal, { kind: 'straight' }), POINTS).fits;
    expect([fit(1500), fit(1200), fit(1350)]).toEqual(['point-to-point', 'parallel', null]);
    expect(fitOf(length('K', 'N', 1500), POINTS).fits).toBe('either');
  });

  it('that cannot fit is named with both values that its ends come to', () => {
    expect(only(sheet([length('N', 'T', 1350, { kind: 'straight' })]))).toMatchObject({
      ...{ level: 'doubt', code: 'length-unfit', at: { block: 'lengths', row: 0, column: 'nominal' } },
      values: { name: 'N-T', value: { mm: 1350 }, distance: { mm: 1500 }, parallel: { mm: 1200 } },
    });
  });

  it('that fits as the diagonal although it is called straight is told so, and the other way round', () => {
    expect(only(sheet([length('K', 'N', 1700, { kind: 'straight' })]))).toMatchObject({
      ...{ code: 'length-other-kind', values: { kind: 'straight', other: 'diagonal' } },
    });
    expect(only(sheet([length('K', 'N', 1500, { kind: 'diagonal' })]))).toMatchObject({
      ...{ code: 'length-other-kind', values: { kind: 'diagonal', other: 'straight' } },
    });
  });

  it('that was typed in inches is told so', () => {
    expect(only(sheet([length('K', 'N', 59.06)]))).toMatchObject({ code: 'length-inches' });
  });

  it('is given its own tolerance and the rounding of all values, and no more', () => {
    const off = (mm: number) => codes(sheet([length('K', 'N', 1500 + mm, { kind: 'straight' })]));
    expect([off(4.5), off(-4.5)]).toEqual([[], []]);
    expect([off(4.6), off(-4.6)]).toEqual([['doubt length-unfit'], ['doubt length-unfit']]);
  });

  it('is left alone where the half widths are not known, unless it is too short for its stations', () => {
    const points = instead('K', { halfWidth: null });
    expect(codes(sheet([length('K', 'N', 1700)], points))).toEqual([]);
    expect(only(sheet([length('K', 'N', 1400)], points))).toMatchObject({
      ...{ code: 'length-short', values: { least: { mm: 1500 } } },
    });
    expect(fitOf(length('K', 'N', 1700), points).fits).toBe('unknown');
  });

  it('needs two ends that the sheet has, on a side that they have, and not the same one twice', () => {
    expect(codes(sheet([length('K', '', 1500)]))).toEqual(['fault end-missing']);
    expect(codes(sheet([length('K', 'Z', 1500)]))).toEqual(['fault end-unknown']);
    expect(codes(sheet([length('K.L', 'N.R', 1700)], instead('N', { side: 'L' })))).toContain(
      'fault end-side',
    );
    expect(codes(sheet([length('K', 'K', 1500)]))).toEqual(['fault ends-same']);
    expect(codes(sheet([length('K', 'N', Number.NaN)]))).toEqual(['fault nominal-missing']);
  });

  it('may have two values under one name, straight and diagonal, but not one twice nor a third', () => {
    const two = [length('K', 'N', 1500), length('K', 'N', 1700)];
    expect(codes(sheet([...two, length('N', 'K', 1700)]))).toEqual(['fault length-twice']);
    expect(codes(sheet([...two, length('K', 'N', 1501)]))).toEqual(['fault length-third']);
  });
});

describe('points', () => {
  it('have each letter once a side', () => {
    expect(codes(sheet([], [...POINTS, point('A', { side: 'L', section: 'front', station: 0 })]))).toEqual([
      'fault letter-twice',
    ]);
  });

  it('with a height need a station, and none stands on the centerline', () => {
    expect(codes(sheet([], instead('A', { station: null })))).toEqual(['fault station-missing']);
    expect(codes(sheet([], instead('A', { side: 'center' })))).toContain('fault center-height');
    expect(codes(sheet([], instead('A', { tolerance: 0 })))).toEqual(['fault tolerance-zero']);
  });

  it('that differ left and right are named, by their letter or by their station', () => {
    const right = { ...point('A', { section: 'front', station: 0 }), side: 'R', height: 246 } as const;
    expect(only(sheet([], [...instead('A', { side: 'L' }), right]))).toMatchObject({
      code: 'mirror-height',
      values: { letters: 'A', left: { mm: 240 }, right: { mm: 246 }, difference: { mm: 6 } },
    });
    const own = { ...right, letter: 'B', height: 240, halfWidth: 404 };
    expect(only(sheet([], [...instead('A', { side: 'L' }), own]))).toMatchObject({
      ...{ code: 'mirror-half-width', values: { letters: 'A, B' } },
    });
  });

  it('against the order of the sections are named, the fewest of them', () => {
    expect(only(sheet([], instead('A', { station: 2600 })))).toMatchObject({
      ...{ code: 'order', at: { row: 0, column: 'station' }, values: { letter: 'A', section: 'front' } },
    });
    const turned = POINTS.map((one) => ({ ...one, station: -(one.station ?? 0) }));
    expect(codes(sheet([], turned))).toEqual(['doubt from-rear']);
  });

  it('that all lie within two feet were typed in inches', () => {
    const inches = POINTS.map((one) => ({ ...one, station: (one.station ?? 0) / 25.4 }));
    expect(codes(sheet([], inches))).toEqual(['doubt inches']);
  });
});

describe('zero stations', () => {
  it('are two, in the center section, with a height on both sides', () => {
    expect(codes(sheet([], instead('N', { zero: false })))).toEqual(['fault zero-count']);
    expect(codes(sheet([], instead('T', { zero: true })))).toContain('fault zero-count');
    expect(codes(sheet([], instead('K', { section: null })))).toEqual(['doubt zero-section']);
    expect(codes(sheet([], instead('K', { side: 'L' })))).toEqual(['fault zero-side']);
    const left = POINTS.map((one) => ({ ...one, side: 'L' as const }));
    expect(codes(sheet([], left))).toEqual(['doubt zero-side', 'doubt zero-side']);
  });

  it('are not asked of a sheet of lengths alone', () => {
    const bare = POINTS.map((one) => ({ ...one, height: null, zero: false }));
    expect(codes(sheet([length('K', 'N', 1500)], bare))).toEqual([]);
    expect(codes({ points: [], lengths: [] })).toEqual(['fault nothing']);
  });
});

describe('a sheet as it is typed', () => {
  const number = (text: string) => (/^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : null);
  const typed = {
    points: [
      { ...emptyPoint(), letter: ' K ', section: 'Mitte', station: '1000', height: '240,5', zero: 'x' },
      emptyPoint(),
      { ...emptyPoint(), letter: 'N', side: 'sideways', station: '25OO', feature: 'Bohrung' },
    ],
    lengths: [emptyLength(), { ...emptyLength(), from: 'K', to: 'N', nominal: '1500' }],
  };

  it('is read in either language, empty rows left out, and what is no number or word is named where it stands', () => {
    const read = readTyped(typed, { number, tolerance: 4 });
    expect(read.points[0]).toEqual(
      point('K', { height: 240.5, halfWidth: null, zero: true, tolerance: 4, feature: null }),
    );
    expect(read.points[1]).toMatchObject({ letter: 'N', side: 'both', feature: 'hole', station: null });
    expect(read.lengths).toEqual([length('K', 'N', 1500, { tolerance: 4 })]);
    expect(read.remarks).toMatchObject([
      { code: 'word-wrong', at: { block: 'points', row: 2, column: 'side' }, values: { text: 'sideways' } },
      { code: 'number-wrong', at: { block: 'points', row: 2, column: 'station' }, values: { text: '25OO' } },
    ]);
    const checked = remarksAt(checkRows(read), read.places);
    expect(checked.find(({ code }) => code === 'zero-count')?.at).toMatchObject({ row: 0 });
  });

  it('holds one entry for two points and two heights', () => {
    const { points, dimensions } = expandRows(sheet([length('K', 'N', 1500)], POINTS.slice(1, 3)));
    expect(points.map(({ letter, side }) => `${letter}${side ?? ''}`)).toEqual(['KL', 'KR', 'NL', 'NR']);
    expect(dimensions.map(({ quantity, point: of, side }) => `${quantity} ${of}${side ?? ''}`)).toEqual([
      ...['length K-N', 'height KL', 'height KR', 'height NL', 'height NR'],
    ]);
    expect(dimensions[0]).toMatchObject({ section: 'center', nominal: 1500 });
  });
});
