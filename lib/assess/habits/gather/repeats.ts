import { type RoundContext, shownOf } from './context';
import { isOn, STEPS, stepClass } from './resolution';

/** Below this a sum of squares is rounding: all readings of the dimension are the same. */
const SAME = 1e-9;

/** Dimensions read more than once with the gauge untouched: how many show the same value each time, and the scatter. */
export function gatherRepeats(context: RoundContext): void {
  for (const setup of context.round.setups) {
    const sheaf = context.sheafOf(setup.technician);
    const step = stepClass(setup.gaugeKind);
    const tally = sheaf.tally.repeats[step];
    let looked = false;
    for (const seen of setup.observations) {
      if (seen.n < 2 || seen.quantity === 'centerline') continue;
      looked = true;
      const alike = seen.ss < SAME;
      if (alike && Math.abs(seen.deviation) < SAME) continue;
      const known = tally.sets[seen.n] ?? { sets: 0, alike: 0 };
      tally.sets[seen.n] = { sets: known.sets + 1, alike: known.alike + (alike ? 1 : 0) };
      tally.ss += seen.ss;
      tally.df += seen.n - 1;
      if (!isOn((seen.deviation + seen.nominal) * seen.n, STEPS[step].fine)) tally.finer++;
      if (alike) sheaf.show('repeats-alike', shownOf(context, setup));
    }
    if (looked) sheaf.look('repeats-alike');
  }
}
