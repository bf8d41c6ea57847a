import { fisherUpper } from '@/lib/stats/contingency';
import { tUpperQuantile } from '@/lib/stats/distributions';
import type { Moments } from '../moments';
import { type Hands, type Judgement, type MeansOf, NO_OTHERS, othersOf, untested } from './judgement';
import { compareMeans, wouldShow } from './means';
import { total } from './rates';
import { HANDS_DIFFER, WORTH_TRAINING } from './sizes';
import { percent, range } from './words';

const HABIT = 'no-rehang';

const countOf = ({ n, s }: Moments) => ({ n, x: s });

/** A share near 0 or 1 is uncertain by at least what its count says. */
function least(_value: number, { n, s }: Moments): number {
  const drawn = (s + 1) / (n + 2);
  return (drawn * (1 - drawn)) / (n + 2);
}

/**
 * Of heights that were out of tolerance when first hung, the share that nobody hung again in the round: larger than in
 * the other hands, allowing for heights of one job going together and for how much hands differ; and by Fisher's
 * exact test.
 */
export function judgeNoRehang(technician: string, hands: Hands<MeansOf<typeof HABIT>>): Judgement {
  const own = hands.all.get(technician);
  const rest = othersOf(hands, technician);
  const test = own && compareMeans(own, rest, ({ means }) => means[HABIT], HANDS_DIFFER.rehangs, { least });
  if (!test) return untested('There are fewer than three jobs with a height out of tolerance.');
  if (test.comparison === null) return untested(NO_OTHERS);
  const count = countOf(own.means[HABIT].all);
  const others = total(rest.map(({ means }) => countOf(means[HABIT].all)));
  const exact = fisherUpper(count.x, count.n, others.x, others.n);
  const half = tUpperQuantile(0.025, test.own.df) * Math.sqrt(test.own.variance);
  const low = Math.max(0, test.own.value - half);
  const high = Math.min(1, test.own.value + half);
  const usual = others.x / others.n;
  return {
    p: Math.max(test.comparison.above, exact),
    why: null,
    effect: { value: test.own.value, low, high, unit: 'heights', reference: usual },
    enough: usual >= WORTH_TRAINING[HABIT] || wouldShow(test, WORTH_TRAINING[HABIT] - usual),
    evidence: `Of ${count.n} heights that were out of tolerance when first hung, ${count.x} were not hung again (${percent(test.own.value)}, ${range(low, high, percent)}); in other hands ${others.x} of ${others.n} (${percent(usual)}).`,
    shown: HABIT,
  };
}
