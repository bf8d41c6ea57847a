import { grouped } from '@/lib/measure/grouped';
import type { Job } from '@/lib/measure/types';
import type { Habit, RoundVerdict } from '../types';
import type { FirstReadings } from './first-readings';
import { habitsOf } from './habit-matrix';
import { addTallies, type HabitTally } from './tally';
import { tallyHabits } from './tally-habits';

/** One sum for each technician, of a shop's jobs at once. */
export function tallyShop(
  jobs: readonly Job[],
  verdicts: readonly RoundVerdict[],
  firsts: FirstReadings = new Map(),
): Map<string, HabitTally> {
  const byJob = grouped(verdicts, ({ job }) => job);
  const tallies = jobs.flatMap((job) => [...tallyHabits(job, byJob.get(job.job) ?? [], firsts.get(job.job))]);
  const byTechnician = grouped(tallies, ([technician]) => technician);
  return new Map(
    [...byTechnician]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([technician, own]) => [technician, addTallies(own.map(([, tally]) => tally))]),
  );
}

/** Habits found in a shop's jobs, by technician, strongest evidence first. */
export function shopHabits(
  jobs: readonly Job[],
  verdicts: readonly RoundVerdict[],
  firsts?: FirstReadings,
): Map<string, Habit[]> {
  const found = habitsOf(tallyShop(jobs, verdicts, firsts));
  return new Map(
    [...grouped(found, ({ technician }) => technician)].map(([technician, findings]) => [
      technician,
      findings.map(({ habit, strength, evidence, shownBy }) => ({
        habit,
        strength,
        evidence,
        setups: shownBy,
      })),
    ]),
  );
}
