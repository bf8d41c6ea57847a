import type { LengthEvidence } from './frame';
import type { Learned, TechnicianHand } from './learned';
import { LENGTH_BANDS } from './sizes';

const density = (y: number, centre: number, variance: number): number =>
  Math.exp((-0.5 * (y - centre) ** 2) / variance) / Math.sqrt(2 * Math.PI * variance);

/** Standard uncertainty of a length's mean deviation, mm: setting (once a setup) and reading. */
export function lengthSd(
  length: Pick<LengthEvidence, 'n'> & { setups?: number },
  hand: TechnicianHand,
  learned: Learned,
): number {
  const setting = (learned.lengths.scatter * hand.setting) ** 2 / (length.setups ?? 1);
  return Math.sqrt(setting + hand.reading ** 2 / length.n);
}

/**
 * ln density of a length's deviation when a point at one of its ends is damaged (`damaged`) and when none is
 * (`sound`); `out` is the probability that the length itself has changed, given damage at an end.
 */
export function lengthEvidence(
  length: LengthEvidence,
  hand: TechnicianHand,
  learned: Learned,
): { damaged: number; sound: number; outGivenDamage: number; outGivenSound: number } {
  const variance = lengthSd(length, hand, learned) ** 2;
  const same = density(length.y, 0, variance);
  let changed = 0;
  for (const { centre, sd, weight } of LENGTH_BANDS) {
    changed +=
      (weight / 2) *
      (density(length.y, centre, variance + sd ** 2) + density(length.y, -centre, variance + sd ** 2));
  }
  // A length far beyond every band stays evidence of a change, not an underflow.
  changed = Math.max(changed, 1e-12);
  const { outWhenDamaged: p, outOtherwise: q } = learned.lengths;
  const damaged = (1 - p) * same + p * changed;
  const sound = (1 - q) * same + q * changed;
  return {
    damaged: Math.log(damaged),
    sound: Math.log(sound),
    outGivenDamage: (p * changed) / damaged,
    outGivenSound: (q * changed) / sound,
  };
}
