// Not by the door: a browser reads this file too, and the door has the file reader, which needs Node.
import { isWithin } from '@/lib/measure/deviation';
import { dimensionKey } from '@/lib/measure/dimension';
import { lengthsNamed, sharedLetters } from '@/lib/measure/shared-letters';
import type { Observation, Quantity, Round, Setup } from '@/lib/measure/types';
import type { RecordedDimension } from './types';

interface Hung {
  setup: Setup;
  observation: Observation;
}

/**
 * The dimensions of a round as they count for the record: of each the last setup, by the mean of its readings, the
 * tolerance's edge included. In the order in which the dimensions were first read.
 *
 * A length whose letters both sides share, with no side said, is the name of two lengths (left and right, or both
 * diagonals), so its last two setups both count: neither side can hide behind the other.
 */
export function recordedDimensions(round: Round): RecordedDimension[] {
  return recordedOf(round, null);
}

/** Its lengths alone. */
export function recordedLengths(round: Round): RecordedDimension[] {
  return recordedOf(round, 'length');
}

/** @param only the quantity that is asked for; null for all. */
function recordedOf(round: Round, only: Quantity | null): RecordedDimension[] {
  const shared = sharedLetters(round.setups.flatMap((setup) => setup.observations));
  const found: RecordedDimension[] = [];
  for (const hung of hungByDimension(round, only).values()) {
    const point = hung[0]?.observation.point ?? '';
    const lengths = hung[0]?.observation.quantity === 'length' ? lengthsNamed(point, shared) : 1;
    const from = Math.max(0, hung.length - lengths);
    for (let at = from; at < hung.length; at++) {
      const one = hung[at];
      if (one) found.push(recorded(one, from + 1));
    }
  }
  return found;
}

function hungByDimension(round: Round, only: Quantity | null): Map<string, Hung[]> {
  const hung = new Map<string, Hung[]>();
  for (const setup of round.setups) {
    for (const observation of setup.observations) {
      if (only !== null && observation.quantity !== only) continue;
      const key = dimensionKey(observation);
      const before = hung.get(key);
      if (before === undefined) hung.set(key, [{ setup, observation }]);
      else before.push({ setup, observation });
    }
  }
  return hung;
}

function recorded({ setup, observation }: Hung, setups: number): RecordedDimension {
  const { quantity, point, side, section, station, zero, nominal, tolerance, n, deviation } = observation;
  return {
    quantity,
    point,
    side,
    section,
    station,
    zero,
    nominal,
    tolerance,
    setup: setup.label,
    technician: setup.technician,
    gauge: setup.gauge,
    n,
    deviation,
    within: isWithin(deviation, tolerance),
    setups,
  };
}
