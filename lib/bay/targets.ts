import type { Dimension } from '@/lib/measure/types';
import type { Prompt } from './next';
import type { Place } from './plan';
import { readingKey } from './record';

/** A reading that one of the typed numbers is for. */
export interface Target {
  place: Place;
  dimension: Dimension;
  repeat: number;
}

/**
 * What several numbers typed at once are for: the dimension that is asked for, then those of the same place that are
 * still to be read in the same go (left and right), then what a tracking gauge reads as well.
 */
export function targetsOf(prompt: Extract<Prompt, { do: 'read' }>, also: Place | null): Target[] {
  const { place, setup, dimension, repeat } = prompt;
  const start = place.dimensions.indexOf(dimension);
  const here = place.dimensions
    .slice(Math.max(0, start))
    .filter((one) => !setup.readings.has(readingKey(one, repeat)))
    .map((one) => ({ place, dimension: one, repeat }));
  const there = (also?.dimensions ?? []).map((one) => ({ place: also ?? place, dimension: one, repeat: 1 }));
  return [...here, ...there];
}
