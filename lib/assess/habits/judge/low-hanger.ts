import { type Hands, type Judgement, type MeansOf, othersOf, untested } from './judgement';
import { bothSided, compareMeans, differenceOf, wouldShow } from './means';
import { HANDS_DIFFER, WORTH_TRAINING } from './sizes';
import { mm, range } from './words';

const HABIT = 'low-hanger';

/**
 * Left less right of the settings away from the zero stations, mean over jobs: different from zero and from the other
 * hands on the same gauges. Damage on one side goes either way and averages out over jobs.
 */
export function judgeLowHanger(technician: string, hands: Hands<MeansOf<typeof HABIT>>): Judgement {
  const own = hands.all.get(technician);
  const test =
    own &&
    compareMeans(own, othersOf(hands, technician), ({ means }) => means[HABIT], HANDS_DIFFER.mm, {
      byGauge: true,
    });
  if (!test) return untested('There are fewer than three jobs with both sides of a height.');
  const { p, up } = bothSided(test);
  const effect = differenceOf(test);
  const side = up ? 'right' : 'left';
  const { k, n } = own.means[HABIT].all;
  const others = test.others === null ? '' : ` In other hands the difference is ${mm(test.others)}.`;
  return {
    p,
    why: null,
    effect: { ...effect, unit: 'mm', reference: test.others },
    enough: wouldShow(test, WORTH_TRAINING[HABIT]),
    evidence: `Over ${n} setups of ${k} jobs the ${side} side reads ${mm(Math.abs(effect.value))} lower beside the other side than is usual (left less right, ${range(effect.low, effect.high, mm)}).${others}`,
    shown: `${HABIT}:${side}`,
  };
}
