import { describe, expect, it } from 'vitest';
import { sampleStandardDeviation } from 'simple-statistics';
import { damageVehicle, type DamagedVehicle, type Zone } from '@/seed/damage';
import type { Shift } from '@/seed/geometry';
import { randomAt } from '@/seed/random';
import { repairLeftover, repairVehicle } from '@/seed/repair';
import { SHEETS } from '@/seed/sheets';

const [sheet] = SHEETS;
if (sheet === undefined) throw new Error('there are no sheets');
const SIDES = ['L', 'R'] as const;

const vehicles = Array.from({ length: 4_000 }, (_, index) => damageVehicle(sheet, randomAt(index)));

interface Point {
  station: number;
  side: 'L' | 'R';
  damaged: boolean;
  shift: Shift;
}

function points({ body, damaged }: Pick<DamagedVehicle, 'body' | 'damaged'>): Point[] {
  return body.flatMap((at, station) =>
    SIDES.map((side) => ({ station, side, damaged: damaged[station]?.[side] ?? false, shift: at[side] })),
  );
}

/** Share of vehicles hit there with a damaged point at this station and side. */
function share(zone: Zone, station: number, side: 'L' | 'R'): number {
  const hit = vehicles.filter((vehicle) => vehicle.zone === zone);
  return hit.filter((vehicle) => vehicle.damaged[station]?.[side]).length / hit.length;
}

describe('damageVehicle', () => {
  it('damages points near the impact far more often than those at the other end', () => {
    expect(share('front', 0, 'L')).toBeGreaterThan(0.45);
    expect(share('front', 3, 'L')).toBeLessThan(0.12);
    expect(share('rear', 3, 'L')).toBeGreaterThan(0.45);
    expect(share('rear', 0, 'L')).toBeLessThan(0.12);
  });

  it('damages the side that was hit', () => {
    expect(share('left', 0, 'L')).toBeGreaterThan(2 * share('left', 0, 'R'));
    expect(share('right', 0, 'R')).toBeGreaterThan(2 * share('right', 0, 'L'));
  });

  it('spares the zero stations most of the time, and sound points but for build scatter', () => {
    expect(share('front', 1, 'L')).toBeLessThan(0.08);
    const sound = vehicles.flatMap(points).filter((point) => !point.damaged);
    expect(sampleStandardDeviation(sound.map(({ shift }) => shift.up))).toBeCloseTo(0.3, 1);
    expect(sound.every(({ shift }) => shift.along === 0 && shift.across === 0)).toBe(true);
  });

  it('moves damaged points by 3 to 25 mm in height, and 70 in 100 of them in plan, too', () => {
    const damaged = vehicles.flatMap(points).filter((point) => point.damaged);
    const heights = damaged.map(({ shift }) => Math.abs(shift.up));
    expect(Math.min(...heights)).toBeGreaterThan(1.5);
    expect(Math.max(...heights)).toBeLessThan(26.5);
    const moved = damaged.filter(({ shift }) => shift.along !== 0).length / damaged.length;
    expect(Math.abs(moved - 0.7)).toBeLessThan(0.03);
  });

  it('pushes the front back, the rear forward, and the sides inward', () => {
    const mean = (zone: Zone, axis: 'along' | 'across') => {
      const moved = vehicles
        .filter((vehicle) => vehicle.zone === zone)
        .flatMap(points)
        .filter((p) => p.damaged);
      return moved.reduce((sum, { shift }) => sum + shift[axis], 0) / moved.length;
    };
    expect(mean('front', 'along')).toBeGreaterThan(3);
    expect(mean('rear', 'along')).toBeLessThan(-3);
    expect(mean('left', 'across')).toBeGreaterThan(3);
    expect(mean('right', 'across')).toBeLessThan(-3);
  });
});

describe('repairVehicle', () => {
  it('brings damaged points to rest within 0.8 mm or so, and leaves sound ones where they were', () => {
    const random = randomAt(1);
    const rest: number[] = [];
    for (const vehicle of vehicles) {
      const repaired = repairVehicle(vehicle, false, random);
      points({ ...vehicle, body: repaired.body }).forEach((point) => {
        if (point.damaged) rest.push(point.shift.up);
        else expect(point.shift).toEqual(vehicle.body[point.station]?.[point.side]);
      });
    }
    expect(sampleStandardDeviation(rest)).toBeCloseTo(0.8, 1);
  });

  it('leaves 4 mm or more in one point where the repair was incomplete, and the next pull takes it out', () => {
    const random = randomAt(2);
    for (const vehicle of vehicles.filter((v) => v.zone === 'front').slice(0, 300)) {
      const repaired = repairVehicle(vehicle, true, random);
      const left = points({ body: repaired.body, damaged: repaired.leftover }).filter((p) => p.damaged);
      expect(left).toHaveLength(points(vehicle).some((point) => point.damaged) ? 1 : 0);
      for (const { shift } of left) expect(Math.abs(shift.up)).toBeGreaterThanOrEqual(4);
      const again = repairLeftover(repaired, random);
      for (const { station, side } of left) {
        expect(Math.abs(again.body[station]?.[side].up ?? NaN)).toBeLessThan(4);
      }
    }
  });
});
