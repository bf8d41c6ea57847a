import type { Side } from '@/lib/measure';
import { NO_SHIFT, type Body, type Shift } from './geometry';
import type { Random } from './random';
import type { VehicleSheet } from './sheet';

export const ZONES = ['front', 'rear', 'left', 'right', 'none'] as const;
/** Where the vehicle was hit; `none`: measured on suspicion. */
export type Zone = (typeof ZONES)[number];

/** Sd of where a sound point is from the sheet, mm: build scatter. */
export const BUILD_SD = 0.3;
const UP = [3, 25] as const;
const IN_PLAN = [2, 12] as const;
/** Share of damaged points whose lengths are out with them. */
const PLAN_SHARE = 0.7;
/** A zero station is damaged this many times as often as another one there would be. */
const AT_ZERO = 0.09;

const ZONE_SHARES: readonly (readonly [Zone, number])[] = [
  ['front', 36],
  ['rear', 27],
  ['left', 14],
  ['right', 13],
  ['none', 10],
];

type Pattern = 'left' | 'right' | 'both';

const PATTERNS: Record<Zone, readonly (readonly [Pattern, number])[]> = {
  front: [
    ['left', 30],
    ['right', 30],
    ['both', 40],
  ],
  rear: [
    ['left', 30],
    ['right', 30],
    ['both', 40],
  ],
  left: [
    ['left', 75],
    ['right', 5],
    ['both', 20],
  ],
  right: [
    ['left', 5],
    ['right', 75],
    ['both', 20],
  ],
  none: [
    ['left', 40],
    ['right', 40],
    ['both', 20],
  ],
};

export interface DamagedVehicle {
  zone: Zone;
  body: Body;
  /** Which points are damaged, by station and side. */
  damaged: readonly Record<Side, boolean>[];
}

/** A vehicle as it comes in: build scatter everywhere, damage near the impact. */
export function damageVehicle(sheet: VehicleSheet, random: Random): DamagedVehicle {
  const zone = random.weighted(ZONE_SHARES);
  const last = sheet.stations.at(-1)?.x ?? 1;
  const damaged = sheet.stations.map((station) => {
    const likely = damageChance(zone, station.x / last) * (station.zero ? AT_ZERO : 1);
    const pattern = random.chance(likely) ? random.weighted(PATTERNS[zone]) : null;
    return { L: pattern === 'left' || pattern === 'both', R: pattern === 'right' || pattern === 'both' };
  });
  const body = damaged.map(({ L, R }) => {
    const direction = random.chance(0.55) ? 1 : -1;
    return { L: point(zone, L, direction, random), R: point(zone, R, direction, random) };
  });
  return { zone, body, damaged };
}

/** Chance that a station is damaged; `x` runs from 0 at the front to 1 at the rear. */
function damageChance(zone: Zone, x: number): number {
  switch (zone) {
    case 'front':
      return 0.8 * Math.exp(-2.2 * x);
    case 'rear':
      return 0.8 * Math.exp(-2.2 * (1 - x));
    case 'left':
    case 'right':
      return 0.35;
    case 'none':
      return 0.03;
  }
}

function point(zone: Zone, damaged: boolean, direction: number, random: Random): Shift {
  const build = random.normal(BUILD_SD);
  if (!damaged) return { ...NO_SHIFT, up: build };
  const plan = random.chance(PLAN_SHARE) ? pushed(zone, random) : NO_SHIFT;
  return { ...plan, up: build + direction * random.between(...UP) };
}

/** A hit pushes away from itself, and a little to one side. */
function pushed(zone: Zone, random: Random): Shift {
  const main = random.between(...IN_PLAN);
  const aside = main * random.between(-0.4, 0.4);
  switch (zone) {
    case 'front':
      return { up: 0, along: main, across: aside };
    case 'rear':
      return { up: 0, along: -main, across: aside };
    case 'left':
      return { up: 0, along: aside, across: main };
    case 'right':
      return { up: 0, along: aside, across: -main };
    case 'none':
      return { up: 0, along: aside, across: random.chance(0.5) ? main : -main };
  }
}
