import type { Side } from '@/lib/measure';
import type { DamagedVehicle } from './damage';
import type { Body, Shift } from './geometry';
import type { Random } from './random';

/** Sd of where a repaired point comes to rest, mm. */
export const REPAIR_SD = 0.8;
/** The same in plan, where the pull is controlled by lengths. */
const REPAIR_PLAN_SD = 0.5;
/** Damage left in is this share of what there was, and at least so many mm. */
const LEFT_SHARE = [0.3, 0.55] as const;
const LEFT_AT_LEAST = 4;

export interface RepairedVehicle {
  body: Body;
  /** Points with damage left in. */
  leftover: readonly Record<Side, boolean>[];
}

/**
 * A vehicle after its repair: damaged points come to rest with the repair's scatter, sound ones stay. With
 * `incomplete`, damage is left in one of the damaged points, as if the clamp had slipped.
 */
export function repairVehicle(vehicle: DamagedVehicle, incomplete: boolean, random: Random): RepairedVehicle {
  const damagedPoints = vehicle.damaged.flatMap(({ L, R }, station) => [
    ...(L ? [{ station, side: 'L' as const }] : []),
    ...(R ? [{ station, side: 'R' as const }] : []),
  ]);
  const kept = incomplete && damagedPoints.length > 0 ? random.pick(damagedPoints) : null;
  const leftover = vehicle.damaged.map((_, station) => ({
    L: kept?.station === station && kept.side === 'L',
    R: kept?.station === station && kept.side === 'R',
  }));
  const body = vehicle.body.map((was, station) => ({
    L: repaired(was.L, vehicle.damaged[station]?.L ?? false, leftover[station]?.L ?? false, random),
    R: repaired(was.R, vehicle.damaged[station]?.R ?? false, leftover[station]?.R ?? false, random),
  }));
  return { body, leftover };
}

/** The next pull at what was left in; everything else stays where it was. */
export function repairLeftover(was: RepairedVehicle, random: Random): RepairedVehicle {
  const body = was.body.map((points, station) => ({
    L: was.leftover[station]?.L === true ? rested(random) : points.L,
    R: was.leftover[station]?.R === true ? rested(random) : points.R,
  }));
  return { body, leftover: was.leftover.map(() => ({ L: false, R: false })) };
}

function repaired(was: Shift, damaged: boolean, left: boolean, random: Random): Shift {
  if (!damaged) return was;
  const rest = rested(random);
  if (!left) return rest;
  const share = random.between(...LEFT_SHARE);
  return {
    up: Math.sign(was.up) * Math.max(LEFT_AT_LEAST, share * Math.abs(was.up)),
    along: share * was.along,
    across: share * was.across,
  };
}

function rested(random: Random): Shift {
  return {
    up: random.normal(REPAIR_SD),
    along: random.normal(REPAIR_PLAN_SD),
    across: random.normal(REPAIR_PLAN_SD),
  };
}
