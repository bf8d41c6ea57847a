import type { Side } from '@/lib/measure';
import { SIDE_SIGN, type End, type Station } from './sheet';

/** How far a point is from where the sheet has it, mm: up, rearward, to the right. */
export interface Shift {
  up: number;
  along: number;
  across: number;
}

/** A vehicle's points, by station and side. */
export type Body = readonly Record<Side, Shift>[];

export const NO_SHIFT: Shift = { up: 0, along: 0, across: 0 };

/** Distance between two points, mm, the vehicle being as `body` says; without one, as the sheet says. */
export function pointToPoint(
  stations: readonly Station[],
  [from, to]: readonly [End, End],
  body?: Body,
): number {
  const a = place(stations, from, body);
  const b = place(stations, to, body);
  return Math.hypot(b.along - a.along, b.across - a.across, b.up - a.up);
}

function place(stations: readonly Station[], { station, side }: End, body: Body | undefined): Shift {
  const at = stationAt(stations, station);
  const shift = body?.[station]?.[side] ?? NO_SHIFT;
  return {
    up: at.height[side] + shift.up,
    along: at.x + shift.along,
    across: SIDE_SIGN[side] * at.halfWidth + shift.across,
  };
}

/** Share that each zero station's error has at x, on the straight line through both. They sum to one. */
export function datumWeights(
  stations: readonly Station[],
  [a, b]: readonly [number, number],
  x: number,
): [number, number] {
  const xa = stationAt(stations, a).x;
  const xb = stationAt(stations, b).x;
  return [(xb - x) / (xb - xa), (x - xa) / (xb - xa)];
}

/** The station of this index; throws where a sheet names one that it does not have. */
export function stationAt(stations: readonly Station[], index: number): Station {
  const station = stations[index];
  if (station === undefined) throw new RangeError(`The sheet has no station number ${index}.`);
  return station;
}
