import { tUpper, tUpperQuantile } from '@/lib/stats/distributions';
import { addMoments, type Moments, noMoments, type Ratio, ratioOf } from '../moments';
import type { HabitTally } from '../tally';
import { driftOf } from './drift';
import { type Hands, type Judgement, type MeansOf, NO_OTHERS, othersOf, untested } from './judgement';
import { HANDS_DIFFER, SEEN_Z, WORTH_TRAINING } from './sizes';
import { mm, range } from './words';

const HABIT = 'one-gauge';

/** Jobs with the gauge that a pair needs at least. */
const LEAST_JOBS = 5;

/** Of a tally, what is looked at for gauges that one hand hangs otherwise than others do. */
export type OnGauges = MeansOf<typeof HABIT | 'drift-in-round'> & Pick<HabitTally, 'places'>;

/** The same, with the drift of the hand and what jobs usually vary by in the shop. */
export type AmongGauges = OnGauges & { drift: ReturnType<typeof driftOf>; usual: number };

export function amongGauges(all: ReadonlyMap<string, OnGauges>): Map<string, AmongGauges> {
  const usual = variancePerJob([...all.values()]);
  return new Map([...all].map(([name, hand]) => [name, { ...hand, drift: driftOf(hand), usual }]));
}

interface Pair {
  gauge: string;
  difference: number;
  /** From readings alone. */
  se: number;
  wholeSe: number;
  df: number;
  p: number;
  jobs: number;
}

const differenceFrom = (moments: Moments, part: Moments): Moments => ({
  k: moments.k - part.k,
  n: moments.n - part.n,
  s: moments.s - part.s,
  nn: moments.nn - part.nn,
  ns: moments.ns - part.ns,
  ss: moments.ss - part.ss,
});

/**
 * One hand with one gauge: (this hand with this gauge − this hand with its other gauges) − (other hands with this
 * gauge − other hands with their other gauges). A bias of the hand or of the gauge drops out. The four means are over
 * jobs; those of one job go together, which makes the difference less uncertain than is reckoned. What a drift within
 * the round explains of a gauge that is hung early or late is taken off first. The least p over the gauges counts, times
 * their number.
 */
export function judgeOneGauge(technician: string, hands: Hands<AmongGauges>): Judgement {
  const own = hands.all.get(technician);
  if (own === undefined) return untested('There are no heights.');
  const others = sumOf(othersOf(hands, technician));
  if (others.all.n === 0) return untested(NO_OTHERS);
  const pairs = Object.keys(own.means[HABIT].by).flatMap((gauge) => pairOf(gauge, own, others));
  const [first] = pairs;
  if (first === undefined) {
    return untested(
      `No gauge was hung in ${LEAST_JOBS} jobs by this technician and by others, with another beside it.`,
    );
  }
  const worst = pairs.reduce((a, b) => (b.p < a.p ? b : a), first);
  const half = tUpperQuantile(0.025, worst.df) * worst.se;
  const effect = { value: worst.difference, low: worst.difference - half, high: worst.difference + half };
  return {
    p: Math.min(1, pairs.length * worst.p),
    why: null,
    effect: { ...effect, unit: 'mm', reference: 0 },
    enough: WORTH_TRAINING[HABIT] >= (SEEN_Z + 0.5) * Math.min(...pairs.map(({ wholeSe }) => wholeSe)),
    evidence: `With gauge ${worst.gauge} heights read ${mm(Math.abs(effect.value))} ${effect.value > 0 ? 'more' : 'less'} than this hand and this gauge show apart (${range(effect.low, effect.high, mm)}; ${worst.jobs} jobs with it).`,
    shown: `${HABIT}:${worst.gauge}`,
  };
}

type Sums = HabitTally['means'][typeof HABIT];

function sumOf(hands: readonly OnGauges[]): Sums {
  const sum: Sums = { all: noMoments(), by: {} };
  for (const { means } of hands) {
    for (const [gauge, moments] of Object.entries(means[HABIT].by)) {
      sum.by[gauge] = addMoments(sum.by[gauge] ?? noMoments(), moments);
      sum.all = addMoments(sum.all, moments);
    }
  }
  return sum;
}

/**
 * Variance between jobs of one hand's mean with one gauge, pooled over all pairs of the shop: that of a single pair is
 * too uncertain where it has few jobs.
 */
function variancePerJob(hands: readonly OnGauges[]): number {
  let squares = 0;
  let weights = 0;
  for (const { means } of hands) {
    for (const moments of Object.values(means[HABIT].by)) {
      const ratio = ratioOf(moments);
      if (ratio === null) continue;
      const freedom = (moments.k - 1) / moments.k;
      squares += ratio.variance * moments.n ** 2 * freedom;
      weights += moments.nn * freedom;
    }
  }
  return weights > 0 ? squares / weights : 0;
}

/** A mean over jobs with a variance of no less than jobs usually have. */
function steadied(moments: Moments, usual: number): Ratio | null {
  const ratio = ratioOf(moments);
  if (ratio === null) return null;
  return { ...ratio, variance: Math.max(ratio.variance, (usual * moments.nn) / moments.n ** 2) };
}

/** The other gauges together, each counted as a cluster of its own within a job. */
function besides({ by }: Sums, gauge: string): Moments {
  const all = Object.values(by).reduce(addMoments, noMoments());
  return differenceFrom(all, by[gauge] ?? noMoments());
}

/** How many setups later in the round this gauge is hung than the hand's others, on the mean. */
function laterBy({ places }: OnGauges, gauge: string): number {
  const here = places[gauge] ?? { n: 0, x: 0 };
  let n = 0;
  let x = 0;
  for (const [name, other] of Object.entries(places)) {
    if (name === gauge) continue;
    n += other.n;
    x += other.x;
  }
  return here.n > 0 && n > 0 ? here.x / here.n - x / n : 0;
}

function pairOf(gauge: string, hand: AmongGauges, others: Sums): Pair[] {
  const { usual, drift } = hand;
  const own = hand.means[HABIT];
  const jobs = own.by[gauge]?.k ?? 0;
  if (jobs < LEAST_JOBS) return [];
  const parts = [
    steadied(own.by[gauge] ?? noMoments(), usual),
    ratioOf(besides(own, gauge)),
    steadied(others.by[gauge] ?? noMoments(), usual),
    ratioOf(besides(others, gauge)),
  ].filter((part): part is Ratio => part !== null);
  const [here, there, elsewhere, beyond] = parts;
  if (!here || !there || !elsewhere || !beyond) return [];
  const later = laterBy(hand, gauge);
  const difference = here.value - there.value - drift.value * later - (elsewhere.value - beyond.value);
  const sampling = parts.reduce((sum, { variance }) => sum + variance, drift.variance * later ** 2);
  const whole = sampling + HANDS_DIFFER.mm ** 2;
  const df = whole ** 2 / parts.reduce((sum, part) => sum + part.variance ** 2 / part.df, 1e-300);
  const wholeSe = Math.sqrt(whole);
  const p = Math.min(1, 2 * tUpper(Math.abs(difference) / wholeSe, df));
  return [{ gauge, difference, se: Math.sqrt(sampling), wholeSe, df, p, jobs }];
}
