import { createTranslator } from 'use-intl/core';
import { describe, expect, it } from 'vitest';
import { catalogue } from '@/app/_words/catalogue';
import { LANGUAGES, type Speech } from '@/app/_words/speech/speech';
import { cellsIn, pastePoints } from '@/app/sheets/_editor/paste';
import { layOut } from '@/app/sheets/_drawing/layout';
import { remarkSentence } from '@/app/sheets/_parts/remark-words';
import { sayer } from '@/app/sheets/_parts/say';
import { inUnitsOf, lengthFrom, lengthTyped } from '@/app/sheets/_parts/typed-lengths';
import {
  emptyPoint,
  FEATURES,
  LENGTH_COLUMNS,
  LENGTH_KINDS,
  POINT_COLUMNS,
  REMARK_CODES,
  ROW_SIDES,
  type PointRow,
  type RemarkValue,
} from '@/lib/measure/sheet';
import { SECTIONS } from '@/lib/measure/types';
import { SHEET_ORIGINS } from '@/lib/store/types';

const words = (language: Speech['language']) => {
  const failed: string[] = [];
  const translator = createTranslator({
    ...{ locale: language, messages: catalogue[language], namespace: 'sheets' },
    onError: ({ message }) => failed.push(message),
  });
  return { say: sayer(translator), failed };
};

/** One of everything that a remark may speak of. */
const VALUES: Record<string, RemarkValue> = {
  ...{ letter: 'K', letters: 'K, L', name: 'K-N', end: 'N', text: 'x', side: 'L', kind: 'straight' },
  ...{ other: 'diagonal', section: 'front', otherSection: 'rear', most: { count: 80 }, first: { count: 2 } },
  ...{ row: { count: 3 }, count: { count: 1 }, value: { mm: 1452 }, low: { mm: 0 }, high: { mm: 9 } },
  ...{ distance: { mm: 1500 }, parallel: { mm: 1499 }, least: { mm: 1400 }, left: { mm: 1 } },
  ...{ right: { mm: 2 }, difference: { mm: 1 }, station: { mm: 10 }, otherStation: { mm: 20 } },
  ...{ span: { mm: 140 } },
};

describe.each(LANGUAGES)('the words of sheets in %s', (language) => {
  const { say, failed } = words(language);
  const speech: Speech = { language, units: 'mm' };

  it('hold a sentence for every remark, with a mend after what is wrong', () => {
    for (const code of REMARK_CODES) {
      const sentence = remarkSentence({ code, values: VALUES }, say, speech);
      expect(sentence, code).toMatch(/[.;:] .*\.$/s);
      expect(sentence, code).not.toMatch(/[{}]|sheets\./);
    }
    expect(failed).toEqual([]);
  });

  it('hold every word of the domain that a sheet is made of', () => {
    const all = [
      ...ROW_SIDES.map((word) => `side.${word}`),
      ...SECTIONS.map((word) => `section.${word}`),
      ...LENGTH_KINDS.map((word) => `kind.${word}`),
      ...FEATURES.map((word) => `features.${word}`),
      ...[...POINT_COLUMNS, ...LENGTH_COLUMNS].map((word) => `columns.${word}`),
      ...['point-to-point', 'parallel', 'either', 'unknown', 'none'].map((word) => `fits.${word}`),
      ...['point', 'height', 'length', 'centerline'].map((word) => `quantity.${word}`),
      ...['nominal', 'tolerance', 'station', 'section', 'zero', 'description', 'feature', 'halfWidth'].map(
        (word) => `field.${word}`,
      ),
      ...SHEET_ORIGINS.map((word) => `history.origin.${word}`),
    ];
    for (const key of all)
      expect(say(key, { unit: 'mm', name: 'K', from: 'S' }), key).not.toMatch(/^sheets\./);
    expect(failed).toEqual([]);
  });
});

describe('a length of a sheet', () => {
  it('that is shown in inches and sent back is the same in millimetres, to the hundredth', () => {
    for (const language of LANGUAGES) {
      const [shown, read] = [lengthTyped({ language, units: 'in' }), lengthFrom('in')];
      for (let hundredths = -5_000; hundredths < 600_000; hundredths += 997)
        expect(read(shown(hundredths / 100))).toBe(hundredths / 100);
    }
    expect(lengthTyped({ language: 'de', units: 'mm' })(1452.125)).toBe('1452,125');
  });

  it('may be typed as a fraction of an inch, and moves with the reader’s units', () => {
    expect(lengthFrom('in')('12 3/16')).toBe(309.56);
    expect(lengthFrom('mm')('twelve')).toBeNull();
    const typed = { points: [{ ...emptyPoint(), letter: 'K', station: '254', height: '?' }], lengths: [] };
    const [row] = inUnitsOf(typed, 'mm', { language: 'en', units: 'in' }).points;
    expect(row).toMatchObject({ letter: 'K', station: '10', height: '?' });
  });
});

describe('a paste', () => {
  it('fills rows from its cell on, with the words of the choices, and adds rows', () => {
    const cells = cellsIn('left\tRail\r\nbeide\tMount\r\n');
    expect(cells).toEqual([
      ['left', 'Rail'],
      ['beide', 'Mount'],
    ]);
    const rows = [{ ...emptyPoint(), letter: 'A' }];
    expect(pastePoints(rows, { row: 0, column: 'side' }, cells ?? [])).toEqual([
      { ...emptyPoint(), letter: 'A', side: 'L', description: 'Rail' },
      { ...emptyPoint(), side: 'both', description: 'Mount' },
    ]);
    expect(cellsIn('1452')).toBeNull();
  });
});

describe('the drawing', () => {
  const at = (letter: string, station: number | null, halfWidth: number | null): PointRow => ({
    ...{ letter, side: 'both', description: null, feature: null, section: null, station, halfWidth },
    ...{ height: 240, zero: false, tolerance: 3, centerline: null },
  });
  const length = { from: 'K', to: 'N', nominal: 1500, tolerance: 3 };

  it('begins with the first point that has a place, left above and right below', () => {
    expect(layOut({ points: [at('K', null, 400)], lengths: [] }, new Set())).toBeNull();
    const layout = layOut({ points: [at('K', 0, 400), at('N', 1500, null)], lengths: [] }, new Set());
    const marks = (layout?.shapes ?? []).filter((shape) => shape.kind === 'mark');
    const [left, right] = marks;
    expect(marks.map(({ look }) => look)).toEqual(['point', 'point', 'unsure', 'unsure', 'point', 'point']);
    expect(left?.x).toBe(right?.x);
    expect(left?.y).toBeLessThan(right?.y ?? 0);
  });

  it('joins both sides by a length without sides, straight or across, and marks one that does not fit', () => {
    const lines = (kind: 'straight' | 'diagonal', unfit: number[]) =>
      layOut(
        { points: [at('K', 0, 400), at('N', 1500, 400)], lengths: [{ ...length, kind }] },
        new Set(unfit),
      )?.shapes.flatMap((shape) =>
        shape.kind === 'line' && ['straight', 'diagonal', 'unfit'].includes(shape.look) ? [shape] : [],
      ) ?? [];
    expect(lines('straight', []).map(({ look }) => look)).toEqual(['straight', 'straight']);
    expect(lines('diagonal', [0]).map(({ look }) => look)).toEqual(['unfit', 'unfit']);
    const ys = lines('straight', []).map(({ d }) =>
      [...d.matchAll(/[ML][\d.]+ ([\d.]+)/g)].map(([, y]) => y),
    );
    for (const [from, to] of ys) expect(from).toBe(to);
  });
});
