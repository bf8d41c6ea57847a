import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { typedLengths } from '@/lib/bay';
import { inchesToMillimetres } from '@/lib/measure/units';

const RUNS = { numRuns: 300, seed: 20261128 };
const hundredths = fc.integer({ min: -300_000, max: 2_000_000 });
const inMetric = (value: number, comma: boolean) =>
  comma ? (value / 100).toFixed(2).replace('.', ',') : String(value / 100);
const between = fc.constantFrom(' ', ' ; ', '\t', ' | ', '  ');

describe('lengths as they are typed', () => {
  it('are read back as they were written, in millimetres, with a point or a comma, one or several', () => {
    fc.assert(
      fc.property(
        fc.array(hundredths, { minLength: 1, maxLength: 3 }),
        fc.boolean(),
        fc.constantFrom('', ' mm', 'mm'),
        between,
        (values, comma, unit, gap) => {
          const text = values.map((value) => `${inMetric(value, comma)}${unit}`).join(gap);
          expect(typedLengths(text, 'mm')).toEqual(values.map((value) => value / 100));
          if (unit !== '') expect(typedLengths(text, 'in')).toEqual(values.map((value) => value / 100));
        },
      ),
      RUNS,
    );
  });

  it('are read back in inches, as decimals and as fractions, by the hyphen or the space', () => {
    const fraction = fc.record({
      whole: fc.nat(400),
      over: fc.constantFrom(2, 4, 8, 16, 32, 64),
      part: fc.integer({ min: 1, max: 63 }),
    });
    fc.assert(
      fc.property(
        fraction,
        fc.constantFrom(' ', '-'),
        fc.constantFrom('', ' in', '"', ' inch', '″'),
        fc.boolean(),
        ({ whole, over, part }, join, unit, negative) => {
          const above = part % over;
          const sign = negative ? '-' : '';
          const size = inchesToMillimetres(whole + above / over);
          const text =
            whole === 0 ? `${sign}${above}/${over}${unit}` : `${sign}${whole}${join}${above}/${over}${unit}`;
          const [read] = typedLengths(text, 'in') ?? [];
          expect(read).toBeCloseTo(negative ? -size : size, 9);
          const decimal = String(whole + above / over);
          expect(typedLengths(`${sign}${decimal}${unit}`, 'in')?.[0]).toBeCloseTo(negative ? -size : size, 9);
        },
      ),
      RUNS,
    );
  });

  it('are none where anything else stands between them, or two numbers run into each other', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), (noise) => {
        const read = typedLengths(`312.5 ${noise}`, 'mm');
        if (/\p{L}/u.test(noise.replace(/mm|cm|in|inch/giu, ''))) expect(read).toBeNull();
        if (read !== null) expect(read[0]).toSatisfy((first: number) => Number.isFinite(first));
      }),
      RUNS,
    );
    for (const text of ['1.234,5', '1.2.3', '12e3', '3/0', '', ' ', 'mm', '--3', '9 '.repeat(41)])
      expect(typedLengths(text, 'mm'), text).toBeNull();
  });
});
