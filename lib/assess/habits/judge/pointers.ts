import type { HabitTally } from '../tally';
import { ratioOf } from '../moments';
import { type Hands, type Judgement, type MeansOf, othersOf, untested } from './judgement';
import { bothSided, compareMeans, differenceOf, type MeanTest, wouldShow } from './means';
import { HANDS_DIFFER, WORTH_TRAINING } from './sizes';
import { mm, range } from './words';

const UNEQUAL = 'unequal-pointers';
const WIDTH = 'pointer-width';

/** A slope is taken for the pointers' only where chance alone seldom gives it. */
const SLOPE_SHOWS = 0.01;

type Slopes = MeansOf<typeof UNEQUAL>;
/** Of a tally, what is looked at for the width of pointers. */
export type Widths = MeansOf<typeof UNEQUAL | typeof WIDTH> & Pick<HabitTally, 'lengths'>;

function slopeTest(hand: Slopes, others: readonly Slopes[]): MeanTest | null {
  return compareMeans(hand, others, ({ means }) => means[UNEQUAL], HANDS_DIFFER.pointers);
}

/** Difference of the pointers' lengths, mm, from the slope on 1000 mm / length (−δ² / 2000 mm, see `gather/lengths`). */
const apart = (slope: number): number => Math.sqrt(Math.max(0, -2000 * slope));

/** Lengths short in proportion to 1 / length: steeper than zero and than in the other hands. */
export function judgeUnequalPointers(technician: string, hands: Hands<Slopes>): Judgement {
  const own = hands.all.get(technician);
  const test = own && slopeTest(own, othersOf(hands, technician));
  if (!test) return untested('There are fewer than three jobs with lengths of different size by tram.');
  const { value, low, high } = differenceOf(test);
  const { k } = own.means[UNEQUAL].all;
  return {
    p: Math.max(test.comparison?.below ?? 0, test.belowZero),
    why: null,
    effect: {
      value: apart(value),
      low: apart(high),
      high: apart(low),
      unit: 'mm',
      reference: test.others === null ? null : apart(test.others),
    },
    enough: wouldShow(test, WORTH_TRAINING[UNEQUAL]),
    evidence: `Over ${k} jobs a length of 1000 mm reads ${mm(Math.abs(value))} ${value < 0 ? 'short' : 'long'} beside a very long one (${range(low, high, mm)}): as pointers do that differ by ${apart(value).toFixed(0)} mm (${apart(high).toFixed(0)} to ${apart(low).toFixed(0)} mm).`,
    shown: UNEQUAL,
  };
}

/**
 * Lengths off by a constant: different from zero and from the other hands on the same trams. What unequal pointers
 * explain is taken off first, where their slope shows.
 */
export function judgePointerWidth(technician: string, hands: Hands<Widths>): Judgement {
  const own = hands.all.get(technician);
  const others = othersOf(hands, technician);
  const test =
    own &&
    compareMeans(own, others, ({ means }) => means[WIDTH], HANDS_DIFFER.mm, {
      byGauge: true,
      offset: explainedBySlope,
    });
  if (!test) return untested('There are fewer than three jobs with lengths by tram.');
  const { p, up } = bothSided(test);
  const effect = differenceOf(test);
  const { k, n } = own.means[WIDTH].all;
  const rest = test.others === null ? '' : ` In other hands the mean is ${mm(test.others)}.`;
  return {
    p,
    why: null,
    effect: { ...effect, unit: 'mm', reference: test.others },
    enough: wouldShow(test, WORTH_TRAINING[WIDTH]),
    evidence: `Over ${n} lengths of ${k} jobs readings are ${mm(Math.abs(effect.value))} too ${up ? 'long' : 'short'} whatever the length (${range(effect.low, effect.high, mm)}).${rest}`,
    shown: `${WIDTH}:${up ? 'long' : 'short'}`,
  };
}

function explainedBySlope(hand: Widths): { value: number; variance: number } {
  const slope = ratioOf(hand.means[UNEQUAL].all);
  if (slope === null || hand.lengths.n === 0) return { value: 0, variance: 0 };
  const test = slopeTest(hand, []);
  if (test === null || test.belowZero > SLOPE_SHOWS) return { value: 0, variance: 0 };
  const x = hand.lengths.x / hand.lengths.n;
  return { value: slope.value * x, variance: slope.variance * x * x };
}
