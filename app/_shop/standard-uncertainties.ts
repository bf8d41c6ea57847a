import type { Learned } from '@/lib/assess';
import { dimensionKey, type Round, type Setup, type Side } from '@/lib/measure';

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
        variance += datumVariance(round, seen.side, seen.station, (zero) => hand(zero).setting);
      }
      uncertainties.set(setupDimensionKey(setup.label, seen), Math.sqrt(variance));
    }
  }
  return uncertainties;
}

/** What the zero gauges of one side bring to a height at `station`, mm²; nothing where the datum has not two ends. */
function datumVariance(round: Round, side: Side, station: number, setting: (setup: Setup) => number): number {
  const zeros = new Map<number, number>();
  for (const setup of round.setups) {
    for (const seen of setup.observations) {
      if (seen.quantity === 'height' && seen.zero && seen.side === side && seen.station !== null) {
        zeros.set(seen.station, setting(setup));
      }
    }
  }
  const [a, b] = [...zeros].map(([at, sd]) => ({ at, sd }));
  if (a === undefined || b === undefined) return 0;
  const lever = (station - a.at) / (b.at - a.at);
  return ((1 - lever) * a.sd) ** 2 + (lever * b.sd) ** 2;
}
