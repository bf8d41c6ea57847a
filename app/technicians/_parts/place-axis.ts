import type { Axis } from '@/app/_figures/axis';
import { axisOfLengths } from '@/app/_figures/estimate-axis';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { PlaceFigure, PlaceKind } from '@/lib/assess/my-hand';

/** The kinds as the catalogue calls them. */
export const KIND_KEYS = {
  'section and side': 'section',
  'distance from the zero span': 'distance',
  gauge: 'gauge',
} as const satisfies Record<PlaceKind, string>;

/** A kind of place within a sentence. */
export const kindInSentence = (kind: PlaceKind): string => words('hand')(`places.kinds.${KIND_KEYS[kind]}`);

/** A place as it is shown: what a gauge is called is the shop's own, the others are the analysis's words. */
export const placeName = (kind: PlaceKind, name: string): string => (kind === 'gauge' ? name : told(name));

export const KINDS: readonly PlaceKind[] = ['section and side', 'distance from the zero span', 'gauge'];

/** Wide enough for all figures and nearly all intervals. */
export function placeAxis(places: readonly PlaceFigure[]): Axis {
  const values = places.flatMap(({ setting }) => (setting.sd === null ? [] : [setting.sd]));
  const farthest = 2 * Math.max(0.25, ...values);
  const ends = places.map(({ setting }) => Math.min(farthest, setting.high ?? 0));
  return axisOfLengths(0, Math.max(0.5, ...values, ...ends));
}
