import type { Reading } from '@/lib/measure';
import { LengthValues } from '@/lib/store/sheets/length-values';
import type { Conflict } from '@/lib/store/types';
import type { BatchSheet } from './batch';

/**
 * Lines that state one sheet value of a length too many. Told once everything is laid out, since the heights of
 * the sheet tell whether a name may stand for two lengths.
 * @param fresh by sheet: the readings of lengths that are not stored yet.
 */
export function lengthConflicts(fresh: ReadonlyMap<BatchSheet, readonly Reading[]>): Conflict[] {
  return [...fresh].flatMap(([sheet, readings]) => {
    const laid = [...sheet.dimensions.values()].map(({ stated }) => stated);
    const values = new LengthValues([...(sheet.known?.dimensions.values() ?? []), ...laid]);
    return readings.flatMap((reading): Conflict[] => {
      const stated = values.contradicted(reading);
      if (stated === null) return [];
      const { line, point, nominal } = reading;
      const reason = `The sheet states the value of length ${point} as ${stated.join(' mm or ')} mm, this line says ${nominal} mm.`;
      return [{ line, column: 'nominal_mm', reason }];
    });
  });
}
