import type { RoundHabit } from '../keys';
import type { HabitTally } from '../tally';
import { type Hands, type Judgement, NO_OTHERS, othersOf, untested } from './judgement';
import { moreOften } from './rates';
import { HANDS_DIFFER, WORTH_TRAINING } from './sizes';
import { percent, range } from './words';

const WHAT: Record<RoundHabit, string> = {
  'clearance-forgotten': 'rounds with clearance, the clearance was left out or added twice at a gauge',
  'another-mark': 'rounds, a gauge was set by another fixed mark',
  'careless-zero': 'rounds, a zero gauge was more likely mis-set than not',
  'heights-first': 'rounds, heights were read before any length of the center section',
};

/** Of a tally, the rounds that could show a habit, and did. */
export interface RoundsOf<Habit extends RoundHabit> {
  rounds: Pick<HabitTally['rounds'], Habit>;
}

/** A habit that a round shows or not, against the rounds of the other hands. */
export function judgeRounds<Habit extends RoundHabit>(
  habit: Habit,
  technician: string,
  hands: Hands<RoundsOf<Habit>>,
): Judgement {
  const own = hands.all.get(technician)?.rounds[habit];
  if (own === undefined || own.n === 0) return untested('There is no round that could show it.');
  const others = othersOf(hands, technician).map(({ rounds }) => rounds[habit]);
  const test = moreOften(own, others, HANDS_DIFFER.rounds, WORTH_TRAINING[habit]);
  if (test === null) return untested(NO_OTHERS);
  const { p, rate, low, high, others: rest, enough } = test;
  return {
    p,
    why: null,
    effect: { value: rate, low, high, unit: 'rounds', reference: rest.x / rest.n },
    enough,
    evidence: `In ${own.x} of ${own.n} ${WHAT[habit]} (${percent(rate)}, ${range(low, high, percent)}); in other hands in ${rest.x} of ${rest.n} (${percent(rest.x / rest.n)}).`,
    shown: habit,
  };
}
