import { type Hands, type Judgement, type MeansOf, othersOf, untested } from './judgement';
import { bothSided, compareMeans, differenceOf, wouldShow } from './means';
import { HANDS_DIFFER, WORTH_TRAINING } from './sizes';
import { mm, range } from './words';

const HABIT = 'drift-in-round';

/** Slope of heights on the order of setups in a round: different from zero and from the other hands. */
export function judgeDrift(technician: string, hands: Hands<MeansOf<typeof HABIT>>): Judgement {
  const own = hands.all.get(technician);
  const test =
    own && compareMeans(own, othersOf(hands, technician), ({ means }) => means[HABIT], HANDS_DIFFER.slope);
  if (!test) return untested('There are fewer than three jobs with two heights hung one after the other.');
  const { p, up } = bothSided(test);
  const effect = differenceOf(test);
  const others = test.others === null ? '' : ` In other hands they change by ${mm(test.others)}.`;
  return {
    p,
    why: null,
    effect: { ...effect, unit: 'mm a setup', reference: test.others },
    enough: wouldShow(test, WORTH_TRAINING[HABIT]),
    evidence: `Over ${own.means[HABIT].all.k} jobs heights read ${mm(Math.abs(effect.value))} ${up ? 'more' : 'less'} from one setup of a round to the next than is usual (${range(effect.low, effect.high, mm)}).${others}`,
    shown: `${HABIT}:${up ? 'up' : 'down'}`,
  };
}

/** A slope is taken for the hand's only where chance alone seldom gives it. */
const SLOPE_SHOWS = 0.01;

/** The hand's own slope, mm a setup, with its variance; 0 where it does not show. */
export function driftOf(hand: MeansOf<typeof HABIT>): { value: number; variance: number } {
  const test = compareMeans(hand, [], ({ means }) => means[HABIT], HANDS_DIFFER.slope);
  if (test === null || bothSided(test).p > SLOPE_SHOWS) return { value: 0, variance: 0 };
  return test.own;
}
