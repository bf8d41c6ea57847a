import { deviationOf, isWithin } from '@/lib/measure/deviation';
import { setHeight } from '@/lib/measure/trade';
import type { Dimension } from '@/lib/measure/types';
import type { Place } from './plan';
import { readingKey, type RecordedSetup } from './record';

/** One dimension as a gauge read it where it hangs. */
export interface ReadDimension {
  dimension: Dimension;
  /** As read, in their order, mm. */
  values: number[];
  /** Mean of the readings less the sheet (and, of a height, the clearance), mm. */
  deviation: number;
  within: boolean;
}

/** What a gauge has read at its place so far, left before right. */
export function readAt(place: Place, setup: RecordedSetup, clearance: number): ReadDimension[] {
  return place.dimensions.flatMap((dimension) => {
    const values = Array.from(
      { length: place.readings },
      (_, at) => setup.readings.get(readingKey(dimension, at + 1))?.value,
    ).filter((value) => value !== undefined);
    if (values.length === 0) return [];
    const all = values.map((value) => deviationOf({ ...dimension, clearance, value }));
    const deviation = all.reduce((sum, one) => sum + one, 0) / all.length;
    return [{ dimension, values, deviation, within: isWithin(deviation, dimension.tolerance) }];
  });
}

/** What the gauge is set to for a dimension: of a height the clearance is added already, mm. */
export const settingOf = ({ quantity, nominal }: Dimension, clearance: number): number =>
  quantity === 'height' ? setHeight(nominal, clearance) : nominal;
