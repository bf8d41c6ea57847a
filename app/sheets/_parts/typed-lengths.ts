import type { Speech, Units } from '@/app/_words/speech';
import { typedLengths } from '@/lib/bay/typed';
import type { TypedSheet } from '@/lib/measure/sheet';
import { millimetresToInches } from '@/lib/measure/units';

/** An inch as typed is rounded to this, so that what is shown in inches and sent back is the same in mm. */
const FINEST = 0.01;
const DIGITS: Record<Units, number> = { mm: 3, in: 4 };

/** One length as it is typed in these units, in mm; null where it is none. */
export const lengthFrom =
  (units: Units) =>
  (text: string): number | null => {
    const found = typedLengths(text, units);
    if (found?.length !== 1 || found[0] === undefined) return null;
    return units === 'mm' ? found[0] : Number((Math.round(found[0] / FINEST) * FINEST).toFixed(2));
  };

/** A length in mm as a field holds it: all its digits, in the reader's units and decimal sign. */
export const lengthTyped =
  ({ units, language }: Speech) =>
  (mm: number): string => {
    if (!Number.isFinite(mm)) return '';
    const value = units === 'mm' ? mm : millimetresToInches(mm);
    const text = String(Number(value.toFixed(DIGITS[units])));
    return language === 'de' ? text.replace('.', ',') : text;
  };

/** What was typed in other units, in the reader's; cells that are no length stay as they are. */
export function inUnitsOf(typed: TypedSheet, units: Units, to: Speech): TypedSheet {
  if (units === to.units) return typed;
  const [from, shown] = [lengthFrom(units), lengthTyped(to)];
  const cell = (text: string) => {
    const value = from(text);
    return value === null ? text : shown(value);
  };
  return {
    points: typed.points.map((row) => ({
      ...row,
      station: cell(row.station),
      height: cell(row.height),
      halfWidth: cell(row.halfWidth),
      tolerance: cell(row.tolerance),
      centerline: cell(row.centerline),
    })),
    lengths: typed.lengths.map((row) => ({
      ...row,
      nominal: cell(row.nominal),
      tolerance: cell(row.tolerance),
    })),
  };
}
