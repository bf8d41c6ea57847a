import type { RoundVerdict } from '@/lib/assess';
import { type FirstReadings, type HabitTally, sumByTechnician, tallyHabits } from '@/lib/assess/habits';
import type { Job } from '@/lib/measure';
import { grouped } from '@/lib/measure/grouped';

/** One sum for each technician, of a shop's jobs at once. */
export function tallyShop(
  jobs: readonly Job[],
  verdicts: readonly RoundVerdict[],
  firsts: FirstReadings = new Map(),
): Map<string, HabitTally> {
  const byJob = grouped(verdicts, ({ job }) => job);
  return sumByTechnician(jobs.map((job) => tallyHabits(job, byJob.get(job.job) ?? [], firsts.get(job.job))));
}
