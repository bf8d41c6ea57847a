import type { Learned } from '@/lib/assess/cause/learned';
import { dimensionKey } from '@/lib/measure/dimension';
import type { Round, Setup, Side } from '@/lib/measure/types';

/** Key of one dimension in one setup. */
export function setupDimensionKey(setup: string, dimension: Parameters<typeof dimensionKey>[0]): string {
  return `${setup} ${dimensionKey(dimension)}`;
}

/**
 * Standard uncertainty of every deviation of a round, mm, by `setupDimensionKey`: reading again (√n times smaller
 * for n readings) and setting again, added in squares; away from the zero stations also the setting of both zero
 * gauges, carried along the datum by the lever. A zero station's own reading shows reading scatter alone.
 * Source: GUM (JCGM 100:2008), 5.1.2, with the sensitivities of the height model.
 */
export function standardUncertainties(round: Round, learned: Learned): Map<string, number> {
  const hand = (setup: Setup) => learned.technicians[setup.technician] ?? learned.newTechnician;
  const uncertainties = new Map<string, number>();
  for (const setup of round.setups) {
    const { reading, setting } = hand(setup);
    for (const seen of setup.observations) {
      let variance = reading ** 2 / seen.n;
      if (seen.quantity === 'length') variance += (learned.lengths.scatter * setting) ** 2;
      else if (!seen.zero) variance += setting ** 2;
      if (seen.quantity === 'height' && !seen.zero && seen.side !== null && seen.station !== null) {
        const zeros = zeroSettings(round, setup, seen.side, (zero) => hand(zero).setting);
        variance += datumVariance(zeros, seen.station);
      }
      uncertainties.set(setupDimensionKey(setup.label, seen), Math.sqrt(variance));
    }
  }
  return uncertainties;
}

/** A zero gauge as a height was read against it: where it hung, and the setting sd of the hand that hung it, mm. */
interface ZeroSetting {
  station: number;
  sd: number;
}

/** The zero gauges of one side that `setup` was read against: those last hung before it, or else the first ones. */
function zeroSettings(
  round: Round,
  setup: Setup,
  side: Side,
  settingSd: (zero: Setup) => number,
): ZeroSetting[] {
  const zeros = new Map<number, number>();
  for (const earlier of round.setups) {
    for (const { quantity, zero, side: seenSide, station } of earlier.observations) {
      if (quantity !== 'height' || !zero || seenSide !== side || station === null) continue;
      if (earlier.takenAt <= setup.takenAt || !zeros.has(station)) zeros.set(station, settingSd(earlier));
    }
  }
  return [...zeros].map(([station, sd]) => ({ station, sd }));
}

/** What two zero gauges bring to a height at `station`, mm²; nothing where the datum has not two ends. */
function datumVariance([a, b]: readonly ZeroSetting[], station: number): number {
  if (a === undefined || b === undefined) return 0;
  const lever = (station - a.station) / (b.station - a.station);
  return ((1 - lever) * a.sd) ** 2 + (lever * b.sd) ** 2;
}
