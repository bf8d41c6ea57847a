import { normalUpper } from '@/lib/stats/distributions';
import type { HabitTally } from '../tally';
import { againstOthers } from './against-others';
import { type Hands, type Judgement, NO_OTHERS, othersOf, untested } from './judgement';
import { HANDS_DIFFER, SEEN_Z, WORTH_TRAINING } from './sizes';
import { type Middle, smoothMiddle } from './smooth-middle';
import { percent, range } from './words';

const HABIT = 'drawn-to-sheet';

/** Of a tally, the heights near the sheet value. */
export type Near = Pick<HabitTally, 'near'>;
/** The same with what their middle should hold. */
export type AroundMiddle = Near & { middle: Middle | null };

export const aroundMiddle = (all: ReadonlyMap<string, Near>): Map<string, AroundMiddle> =>
  new Map([...all].map(([name, { near }]) => [name, { near, middle: smoothMiddle(near) }]));

/**
 * More readings within a quarter of a millimetre of the sheet value than the readings around lead one to expect, and
 * more so than in the other hands (whose own peak, if any, is common to the work).
 */
export function judgeDrawn(technician: string, hands: Hands<AroundMiddle>): Judgement {
  const own = hands.all.get(technician);
  const middle = own?.middle ?? null;
  if (own === undefined || middle === null)
    return untested('There are too few heights near the sheet value.');
  const rest = othersOf(hands, technician).flatMap(({ middle: other }) =>
    other === null ? [] : [{ value: other.excess, variance: other.variance, df: Infinity }],
  );
  const { excess, variance, seen, expected } = middle;
  const comparison = againstOthers({ value: excess, variance, df: Infinity }, rest, HANDS_DIFFER.near);
  if (comparison === null) return untested(NO_OTHERS);
  const n = own.near.reduce((sum, count) => sum + count, 0);
  const share = (ln: number): number => (seen - (seen + 0.5) / Math.exp(ln) + 0.5) / n;
  const half = 1.96 * Math.sqrt(variance);
  const effect = { value: (seen - expected) / n, low: share(excess - half), high: share(excess + half) };
  const asked = Math.log((expected + WORTH_TRAINING[HABIT] * n) / expected);
  return {
    p: Math.max(comparison.above, normalUpper(excess / Math.sqrt(variance))),
    why: null,
    effect: { ...effect, unit: 'readings', reference: 0 },
    enough: asked >= SEEN_Z * comparison.wholeSe,
    evidence: `${seen} of ${n} readings within 2.75 mm of the sheet value lie within a quarter of a millimetre of it, where ${expected.toFixed(0)} are expected: ${percent(Math.max(0, effect.value))} too many (${range(100 * effect.low, 100 * effect.high, (value) => `${value.toFixed(1)} %`)}).`,
    shown: HABIT,
  };
}
