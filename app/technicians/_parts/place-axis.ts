import { axisOver, type Axis } from '@/app/_figures/axis';
import type { PlaceFigure, PlaceKind } from '@/lib/assess/my-hand';

export const KINDS: readonly PlaceKind[] = ['section and side', 'distance from the zero span', 'gauge'];

/** Wide enough for all figures and nearly all intervals. */
export function placeAxis(places: readonly PlaceFigure[]): Axis {
  const values = places.flatMap(({ setting }) => (setting.sd === null ? [] : [setting.sd]));
  const farthest = 2 * Math.max(0.25, ...values);
  const ends = places.map(({ setting }) => Math.min(farthest, setting.high ?? 0));
  return axisOver([...values, ...ends], 0, 0.5, 4);
}
