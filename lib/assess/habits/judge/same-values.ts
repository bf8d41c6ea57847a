import { STEPS } from '../gather/resolution';
import { STEP_CLASSES } from '../tally';
import { sameValueChance } from './same-value';
import { coarseShare, readingVariance, type Repeated } from './scatter';

/** Dimensions with repeats, how many show one value each time, and how many should by the hand's own scatter. */
export interface Alike {
  sets: number;
  alike: number;
  expected: number;
}

/** Share of dimensions read finer than the class from which on the class is taken to be read in tenths. */
const FINER = 0.05;

export function alikeOf(tally: Repeated, shop: readonly Repeated[]): Alike {
  const sum: Alike = { sets: 0, alike: 0, expected: 0 };
  for (const step of STEP_CLASSES) {
    const { sets, finer } = tally.repeats[step];
    const all = Object.values(sets).reduce((count, one) => count + one.sets, 0);
    if (all === 0) continue;
    const coarsely = step === 'tenths' ? coarseShare(tally) : 0;
    const { fine, coarse } = finer > FINER * all ? STEPS.tenths : STEPS[step];
    const sd = Math.sqrt(readingVariance(tally, shop, step, coarsely));
    for (const [n, { sets: count, alike }] of Object.entries(sets)) {
      sum.sets += count;
      sum.alike += alike;
      sum.expected += count * sameValueChance(Number(n), { sd, fine, coarse, coarseShare: coarsely });
    }
  }
  return sum;
}
