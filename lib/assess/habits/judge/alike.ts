import { binomialAtLeast } from '@/lib/stats/distributions';
import { binomialInterval } from '@/lib/stats/intervals';
import { againstOthers, type Estimate } from './against-others';
import { type Hands, type Judgement, NO_OTHERS, othersOf, untested } from './judgement';
import { type Alike, alikeOf } from './same-values';
import { logScatter, type Repeated, usualVariances } from './scatter';
import { HANDS_DIFFER, SEEN, WORTH_TRAINING } from './sizes';
import { percent, range } from './words';

const HABIT = 'repeats-alike';

/** Repeats of one hand with how many are alike. */
export type AmongAlike = Repeated & { alike: Alike };

export function amongAlike(all: ReadonlyMap<string, Repeated>): Map<string, AmongAlike> {
  const shop = [...all.values()];
  return new Map([...all].map(([name, hand]) => [name, { ...hand, alike: alikeOf(hand, shop) }]));
}

const logExcess = ({ alike, expected }: Alike): Estimate => ({
  value: Math.log((alike + 0.5) / (expected + 0.5)),
  variance: 1 / (alike + 0.5),
  df: Infinity,
});

/** Of several hands, each with the variance that its size leads one to expect at the share of them all. */
function weighedExcess(hands: readonly Alike[]): Estimate[] {
  const seen = hands.reduce((sum, { alike }) => sum + alike, 0.5);
  const expected = hands.reduce((sum, one) => sum + one.expected, 0.5);
  return hands.map((one) => ({
    ...logExcess(one),
    expected: expected / seen / Math.max(one.expected, 1e-12),
  }));
}

/**
 * Repeats too alike, by two tests, the smaller p times two:
 * - the same value each time, more often than this hand's own scatter and rounding allow (binomial with their mean
 *   chance, which is no less than exact), and than in the other hands beside theirs (binomial share, `againstOthers`);
 * - the scatter of repeats below what hands differ by (`againstOthers` on ln of the variance).
 */
export function judgeAlike(technician: string, hands: Hands<AmongAlike>): Judgement {
  const own = hands.all.get(technician);
  if (own === undefined) return untested('There are no repeats.');
  const others = othersOf(hands, technician);
  const mine = own.alike;
  if (mine.sets === 0) return untested('No dimension was read twice with the gauge untouched.');
  const { sets, alike, expected } = mine;
  const rest = others.map((other) => other.alike).filter((one) => one.sets > 0);
  if (rest.length === 0) return untested(NO_OTHERS);
  const chance = Math.min(1, expected / sets);
  const exact = (x: number): number => binomialAtLeast(x, sets, chance);
  const restAlike = rest.reduce((sum, one) => sum + one.alike, 0);
  const restExpected = rest.reduce((sum, one) => sum + one.expected, 0);
  const share = binomialAtLeast(alike, alike + restAlike, expected / (expected + restExpected));
  const between = againstOthers(logExcess(mine), weighedExcess(rest), HANDS_DIFFER.alike);
  const pSame = Math.max(exact(alike), share, between?.above ?? 0);

  const usual = usualVariances(others);
  const scatter = logScatter(own, usual);
  const scatters = others.map((tally) => logScatter(tally, usual)).filter((one) => one !== null);
  const narrow = scatter === null ? null : againstOthers(scatter, scatters, HANDS_DIFFER.scatter);
  const tests = narrow === null ? 1 : 2;
  const p = Math.min(1, tests * Math.min(pSame, narrow?.below ?? 1));
  const enough = tests * exact(Math.round(sets * Math.min(1, chance + WORTH_TRAINING[HABIT]))) <= SEEN;

  if (narrow !== null && narrow.below < pSame) {
    const ratio = (ln: number): number => Math.exp(ln / 2);
    const [value, low, high] = [
      ratio(narrow.difference),
      ratio(narrow.difference - 1.96 * narrow.se),
      ratio(narrow.difference + 1.96 * narrow.se),
    ];
    return {
      p,
      why: null,
      effect: { value, low, high, unit: 'ratio', reference: 1 },
      enough,
      evidence: `Repeats with the gauge untouched scatter ${percent(value)} as much as in other hands (${range(low, high, percent)}), over ${sets} dimensions that were read more than once.`,
      shown: HABIT,
    };
  }
  const limits = binomialInterval(alike, sets, { method: 'clopper-pearson' });
  const [low, high] = [limits.low ?? 0, limits.high ?? 1];
  return {
    p,
    why: null,
    effect: { value: alike / sets, low, high, unit: 'repeats', reference: chance },
    enough,
    evidence: `Of ${sets} dimensions that were read more than once, ${alike} show the same value each time (${percent(alike / sets)}, ${range(low, high, percent)}), where this hand's own scatter makes ${expected.toFixed(1)} expected; in other hands ${restAlike} where ${restExpected.toFixed(1)} are expected.`,
    shown: HABIT,
  };
}
