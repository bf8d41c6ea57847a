import type { HabitTally } from '../tally';
import type { Judge, Judgement } from './judgement';

/** The test behind a habit. */
export interface HabitTest {
  /** All of a tally that the test looks at: where it is the same of every hand, so are the judgements. */
  partOf: (tally: HabitTally) => object;
  /** Judges each hand among the others of a reference. */
  among: (
    tallies: ReadonlyMap<string, HabitTally>,
  ) => (technician: string, reference: ReadonlySet<string>) => Judgement;
}

/**
 * @param partOf the part of a tally that `judge` is handed; it cannot see more
 * @param prepare what takes long enough to be worked out once a hand instead of once a comparison
 */
export const testOf = <Part extends object, Ready>(
  partOf: (tally: HabitTally) => Part,
  prepare: (parts: ReadonlyMap<string, Part>) => ReadonlyMap<string, Ready>,
  judge: Judge<Ready>,
): HabitTest => ({
  partOf,
  among: (tallies) => {
    const all = prepare(new Map([...tallies].map(([technician, tally]) => [technician, partOf(tally)])));
    return (technician, reference) => judge(technician, { all, reference });
  },
});
