import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  amended,
  checkRows,
  expandRows,
  fitOf,
  kindOf,
  rowsOf,
  sheetChanges,
  type LengthRow,
  type PointRow,
  type SheetRows,
} from '@/lib/measure/sheet';
import { storedSheet } from '@/seed/dimensions';
import { SHEETS } from '@/seed/sheets';

const LETTERS = ['A', 'B', 'C', 'D', 'E', 'F'];

/** Points alike left and right, front to rear, with two zero stations; lengths computed from them. */
const vehicle = fc
  .record({
    steps: fc.array(fc.integer({ min: 200, max: 1500 }), { minLength: 4, maxLength: 6 }),
    heights: fc.array(fc.integer({ min: 100, max: 900 }), { minLength: 6, maxLength: 6 }),
    widths: fc.array(fc.integer({ min: 300, max: 700 }), { minLength: 6, maxLength: 6 }),
    pins: fc.boolean(),
    pairs: fc.uniqueArray(fc.tuple(fc.nat(3), fc.nat(3), fc.boolean()), {
      maxLength: 5,
      selector: ([a, b]) => `${Math.min(a, b)} ${Math.max(a, b)}`,
    }),
  })
  .map(({ steps, heights, widths, pins, pairs }): SheetRows => {
    const points = steps.map((_, index): PointRow => {
      const zero = index === 1 || index === 2;
      return {
        ...{ letter: LETTERS[index] ?? '', side: 'both', description: null, feature: 'hole', zero },
        section: index < 1 ? 'front' : zero ? 'center' : 'rear',
        station: steps.slice(0, index).reduce((sum, step) => sum + step, 0),
        ...{ height: heights[index] ?? 0, halfWidth: widths[index] ?? 0, tolerance: 3 },
        centerline: pins && !zero ? 0 : null,
      };
    });
    const lengths = pairs.flatMap(([a, b, across]): LengthRow[] => {
      const [from, to] = [points[a], points[b]];
      if (from === undefined || to === undefined || a === b) return [];
      const at = (one: PointRow) => [one.station ?? 0, one.halfWidth ?? 0, one.height ?? 0] as const;
      const [p, q] = [at(from), at(to)];
      const nominal = Math.round(Math.hypot(q[0] - p[0], across ? q[1] + p[1] : q[1] - p[1], q[2] - p[2]));
      const kind = across ? 'diagonal' : 'straight';
      return [{ from: from.letter, to: to.letter, kind, nominal, tolerance: 3 }];
    });
    return { points, lengths };
  });

describe('a sheet', () => {
  it('that is entered, kept and taken up again is the same sheet', () => {
    fc.assert(
      fc.property(vehicle, (rows) => {
        const content = expandRows(rows);
        const again = rowsOf(content);
        expect(again.points).toEqual(rows.points);
        expect(sheetChanges(content, expandRows(again))).toEqual([]);
        expect(amended(content, expandRows(again)).dimensions).toHaveLength(content.dimensions.length);
      }),
      { numRuns: 100, seed: 1 },
    );
  });

  it('whose lengths were computed from its points passes every check, and its kinds are found again', () => {
    fc.assert(
      fc.property(vehicle, ({ points, lengths }) => {
        expect(checkRows({ points, lengths }).map(({ code }) => code)).toEqual([]);
        for (const one of lengths) {
          const found = kindOf({ ...one, kind: null }, points);
          // Where both come to nearly the same, either is right.
          if (found !== one.kind) expect(fitOf({ ...one, kind: found }, points).fits).not.toBeNull();
        }
      }),
      { numRuns: 100, seed: 2 },
    );
  });

  it('in which one length is off by more than tolerance and rounding is told so, at that length', () => {
    fc.assert(
      fc.property(
        vehicle,
        fc.nat(4),
        fc.integer({ min: 40, max: 150 }),
        ({ points, lengths }, which, off) => {
          const index = which % Math.max(1, lengths.length);
          const wrong = lengths.map((one, at) =>
            at === index ? { ...one, nominal: one.nominal + off } : one,
          );
          const fit =
            lengths[index] && fitOf({ ...lengths[index], nominal: lengths[index].nominal + off }, points);
          // What is longer than point to point by so much is no projection either.
          if (fit !== undefined) expect(fit.fits).toBeNull();
          expect(checkRows({ points, lengths: wrong }).flatMap(({ at }) => at?.row ?? [])).toEqual(
            lengths.length === 0 ? [] : [index],
          );
        },
      ),
      { numRuns: 100, seed: 3 },
    );
  });
});

describe('the demo shop’s sheets', () => {
  it('are taken up and kept again without a change, and none has a fault', () => {
    for (const sheet of SHEETS.map(storedSheet)) {
      const rows = rowsOf(sheet);
      expect(sheetChanges(sheet, amended(sheet, expandRows(rows))), sheet.name).toEqual([]);
      expect(
        checkRows(rows).filter(({ code }) => !code.startsWith('mirror')),
        sheet.name,
      ).toEqual([]);
    }
  });
});
