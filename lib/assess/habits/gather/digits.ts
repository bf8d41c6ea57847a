import { withoutRoundingNoise } from '@/lib/measure/deviation';
import type { Observation, Setup } from '@/lib/measure/types';
import { firstKey } from '../first-readings';
import { NEAR_BINS } from '../tally';
import { type RoundContext, shownOf } from './context';
import { isOn, remainder, STEPS, stepClass } from './resolution';
import type { Sheaf } from './sheaf';

/**
 * Last digits and closeness to the sheet value, by the first reading of each dimension in a setup: a second reading
 * with the gauge untouched is near the first, so it would count the same chance twice.
 */
export function gatherDigits(context: RoundContext): void {
  for (const setup of context.round.setups) {
    const sheaf = context.sheafOf(setup.technician);
    let looked = false;
    for (const seen of setup.observations) {
      const first = seen.n === 1 ? seen.deviation : context.firsts.get(firstKey(setup.label, seen));
      if (first === undefined) continue;
      gatherNear(context, sheaf, setup, seen, first);
      if (seen.quantity === 'centerline') continue;
      const clearance = seen.quantity === 'height' ? context.round.clearance : 0;
      const value = withoutRoundingNoise(first + seen.nominal + clearance);
      looked = countDigit(context, sheaf, setup, seen, value, first === 0) || looked;
    }
    if (looked) sheaf.look('preferred-digits');
  }
}

function countDigit(
  context: RoundContext,
  sheaf: Sheaf,
  setup: Setup,
  seen: Observation,
  value: number,
  atSheet: boolean,
): boolean {
  const { digits } = sheaf.tally;
  const step = stepClass(setup.gaugeKind);
  // A gauge that this shop reads finer than its kind is known for says nothing here.
  if (!isOn(value, STEPS[step].fine)) return false;
  if (step === 'tenths') {
    const digit = remainder(value * 10, 10);
    // The sheet value itself is left out here and below: whoever is drawn to it need not prefer its digit.
    if (!atSheet) digits.heaped.n++;
    if (!atSheet && digit % 5 === 0) {
      digits.heaped.x++;
      sheaf.show('preferred-digits:heaped', shownOf(context, setup));
    }
    // A zero station shows reading noise alone, so close to the sheet value that tenths are not alike likely there.
    if (seen.quantity === 'height' && !seen.zero) {
      digits.tenths[digit] = (digits.tenths[digit] ?? 0) + 1;
      sheaf.show(`preferred-digits:${digit}`, shownOf(context, setup));
    }
  } else if (step === 'halves') {
    const whole = isOn(value, 1);
    if (atSheet) {
      digits.halvesAtSheet++;
      return true;
    }
    digits.halves.n++;
    if (whole) digits.halves.x++;
    sheaf.show(`preferred-digits:${whole ? 'whole' : 'half'}`, shownOf(context, setup));
  } else {
    const sheet = Math.round(seen.nominal);
    const cell = 5 * remainder(sheet, 5) + remainder(Math.round(value) - sheet, 5);
    digits.whole[cell] = (digits.whole[cell] ?? 0) + 1;
    if (remainder(value, 5) === 0) sheaf.show('preferred-digits:fives', shownOf(context, setup));
  }
  return true;
}

function gatherNear(
  context: RoundContext,
  sheaf: Sheaf,
  setup: Setup,
  seen: Observation,
  deviation: number,
): void {
  if (seen.quantity !== 'height' || seen.zero) return;
  const bin = Math.round(2 * deviation) + NEAR_BINS;
  if (bin < 0 || bin > 2 * NEAR_BINS) return;
  sheaf.look('drawn-to-sheet');
  sheaf.tally.near[bin] = (sheaf.tally.near[bin] ?? 0) + 1;
  if (bin === NEAR_BINS) sheaf.show('drawn-to-sheet', shownOf(context, setup));
}
