import type { Reading } from '@/lib/measure';
import { datumWeights, pointToPoint, type Body } from './geometry';
import type { VehicleSheet } from './sheet';
import type { RoundTruth } from './truth';

/** Values are written to a tenth of a millimetre, so a mean that differs from the tolerance by less is on its edge. */
const EDGE = 1e-6;

/**
 * Whether a round after the repair was right: as the record has it (each dimension by the mean of its last
 * setup, the tolerance's edge included), and as the body was.
 */
export function rightFirstTime(
  sheet: VehicleSheet,
  round: RoundTruth,
  readings: readonly Reading[],
  body: Body,
): { recorded: boolean; body: boolean } {
  return { recorded: recordedRight(round, readings), body: bodyRight(sheet, body) };
}

function recordedRight(round: RoundTruth, readings: readonly Reading[]): boolean {
  const last = new Map<string, { setup: string; sum: number; n: number; tolerance: number }>();
  for (const reading of readings) {
    if (reading.stage !== round.stage || reading.attempt !== round.attempt) continue;
    const key = `${reading.quantity} ${reading.point} ${reading.side ?? ''}`;
    const clearance = reading.quantity === 'height' ? reading.clearance : 0;
    const deviation = reading.value - reading.nominal - clearance;
    const known = last.get(key);
    if (known?.setup === reading.setup) {
      known.sum += deviation;
      known.n += 1;
    } else {
      last.set(key, { setup: reading.setup, sum: deviation, n: 1, tolerance: reading.tolerance });
    }
  }
  return [...last.values()].every(({ sum, n, tolerance }) => Math.abs(sum / n) <= tolerance + EDGE);
}

function bodyRight(sheet: VehicleSheet, body: Body): boolean {
  const { stations, tolerance, zeros } = sheet;
  const up = (index: number, side: 'L' | 'R') => body[index]?.[side].up ?? 0;
  const heights = stations.every((station, index) => {
    const [wa, wb] = datumWeights(stations, zeros, station.x);
    return (['L', 'R'] as const).every((side) => {
      const tilt = station.zero ? 0 : wa * up(zeros[0], side) + wb * up(zeros[1], side);
      return Math.abs(up(index, side) - tilt) <= tolerance;
    });
  });
  return (
    heights &&
    sheet.lengths.every(
      ({ ends }) => Math.abs(pointToPoint(stations, ends, body) - pointToPoint(stations, ends)) <= tolerance,
    )
  );
}
