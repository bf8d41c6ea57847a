import type { Side } from '@/lib/measure';
import type { Hand } from './hand';
import type { Random } from './random';
import { slipSizes, type SettingFault, type SlipPlace, type SlipSize } from './slips';

/** How one hanger of one setup was set, mm off. */
export interface Setting {
  /** Ordinary scatter. */
  scatter: number;
  /** Mis-set or slip; 0 where there is none. */
  gross: number;
  fault: SettingFault | null;
}

/** Below this a slip is lost in the ordinary scatter and would not be called one. */
const SMALLEST_GROSS = 3.5;
const LARGEST_MISSET = 19;
/** A zero gauge that is further off cannot be levelled with the others: it is noticed at once. */
const LARGEST_AT_ZERO = 60;
const LARGEST_ELSEWHERE = 150;

/** How often each fault is made when one is made. */
const FAULT_WEIGHTS: readonly (readonly [SettingFault, number])[] = [
  ['both hangers', 38],
  ['left hanger', 15],
  ['right hanger', 15],
  ['clearance left out', 6],
  ['clearance twice', 3],
  ['another row', 6],
  ['another mark', 8],
  ['tape', 5],
  ['sides exchanged', 5],
  ['digits exchanged', 5],
];

/**
 * Sets and hangs a gauge once. Half of the ordinary variance is common to both hangers (the bar), half belongs to
 * each hanger; a few setups carry a fault on top.
 */
export function setGauge(
  hand: Hand,
  place: SlipPlace & { zero: boolean },
  random: Random,
): Record<Side, Setting> {
  const common = random.normal(hand.setting * Math.SQRT1_2);
  const fault = drawFault(hand, place, random);
  const one = (side: Side): Setting => ({
    scatter: common + random.normal(hand.setting * Math.SQRT1_2),
    gross: fault?.size[side] ?? 0,
    fault: fault !== null && fault.size[side] !== 0 ? fault.fault : null,
  });
  return { L: one('L'), R: one('R') };
}

function drawFault(
  hand: Hand,
  place: SlipPlace & { zero: boolean },
  random: Random,
): { fault: SettingFault; size: SlipSize } | null {
  if (random.chance(hand.forgetsClearance)) {
    const size = slip('clearance left out', place, random);
    if (size !== null) return { fault: 'clearance left out', size };
  }
  if (!random.chance(hand.missetRate)) return null;
  const weights = FAULT_WEIGHTS.map(
    ([fault, weight]) => [fault, weight * (hand.favours[fault] ?? 1)] as const,
  );
  const fault = random.weighted(weights);
  const misset = random.between(SMALLEST_GROSS, LARGEST_MISSET) * (random.chance(0.5) ? 1 : -1);
  if (fault === 'left hanger') return { fault, size: { L: misset, R: 0 } };
  if (fault === 'right hanger') return { fault, size: { L: 0, R: misset } };
  const size = slip(fault, place, random);
  return size === null ? { fault: 'both hangers', size: { L: misset, R: misset } } : { fault, size };
}

/** A size that this slip can have here and that would neither hide in the scatter nor be noticed at once. */
function slip(fault: SettingFault, place: SlipPlace & { zero: boolean }, random: Random): SlipSize | null {
  const largest = place.zero ? LARGEST_AT_ZERO : LARGEST_ELSEWHERE;
  const possible = slipSizes(fault, place).filter(({ L, R }) => {
    const size = Math.max(Math.abs(L), Math.abs(R));
    return size >= SMALLEST_GROSS && size <= largest;
  });
  return possible.length === 0 ? null : random.pick(possible);
}
