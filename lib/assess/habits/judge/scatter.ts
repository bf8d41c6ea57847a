import { STEPS } from '../gather/resolution';
import { type HabitTally, STEP_CLASSES, type StepClass } from '../tally';

/** Below this many degrees of freedom a hand's scatter is the shop's. */
const LEAST_DF = 10;

/** Of a tally, the repeats, and the readings that are taken to a coarser step. */
export type Repeated = Pick<HabitTally, 'repeats'> & { digits: Pick<HabitTally['digits'], 'heaped'> };

/** Of a tally, the repeats in some steps. */
export interface RepeatsIn<Step extends StepClass> {
  repeats: Pick<HabitTally['repeats'], Step>;
}

/** Share of this technician's readings in tenths that are taken to halves, at most: the estimate and one standard error. */
export function coarseShare({ digits: { heaped } }: Repeated): number {
  if (heaped.n < 20) return 0;
  const share = heaped.x / heaped.n;
  const error = Math.sqrt((share * (1 - share)) / heaped.n);
  return Math.max(0, Math.min(1, (share + error - 0.2) / 0.8));
}

/**
 * Variance of a reading with the gauge untouched, mm², what rounding adds taken off: step² / 12 (Sheppard 1898), the
 * coarser step where readings are taken to it. Never below a tenth of a step squared.
 */
export function readingVariance<Step extends StepClass>(
  tally: RepeatsIn<Step>,
  shop: readonly RepeatsIn<Step>[],
  step: Step,
  coarsely: number,
): number {
  const own = tally.repeats[step];
  const { ss, df } =
    own.df >= LEAST_DF
      ? own
      : shop.reduce(
          (sum, { repeats }) => ({ ss: sum.ss + repeats[step].ss, df: sum.df + repeats[step].df }),
          {
            ss: own.ss,
            df: own.df,
          },
        );
  const { fine, coarse } = STEPS[step];
  const rounding = ((1 - coarsely) * fine ** 2 + coarsely * coarse ** 2) / 12;
  const variance = df > 0 ? ss / df - rounding : 0.25;
  return Math.max(variance, (fine / 10) ** 2);
}

/** ln of the scatter against the variances of others, and how uncertain it is. */
export function logScatter(
  tally: Pick<HabitTally, 'repeats'>,
  usual: Record<StepClass, number>,
): { value: number; variance: number; df: number } | null {
  let ss = 0;
  let expected = 0;
  let df = 0;
  for (const step of STEP_CLASSES) {
    const own = tally.repeats[step];
    if (own.df === 0 || !(usual[step] > 0)) continue;
    ss += own.ss / usual[step];
    expected += own.df;
    df += own.df;
  }
  if (df < LEAST_DF) return null;
  // One reading's worth of usual scatter is added, so that a hand without any scatter has a logarithm.
  return { value: Math.log((ss + 1) / (expected + 1)), variance: 2 / df, df };
}

/** Pooled variance of repeats by step class. */
export function usualVariances(tallies: readonly Pick<HabitTally, 'repeats'>[]): Record<StepClass, number> {
  const of = (step: StepClass): number => {
    let ss = 0;
    let df = 0;
    for (const { repeats } of tallies) {
      ss += repeats[step].ss;
      df += repeats[step].df;
    }
    return df > 0 ? ss / df : 0;
  };
  return { tenths: of('tenths'), halves: of('halves'), whole: of('whole') };
}
