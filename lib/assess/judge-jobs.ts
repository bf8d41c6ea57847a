import type { Job } from '@/lib/measure/types';
import type { Learned } from './cause/learned';
import { type FirstReadings, type HabitTally, sumByTechnician, tallyHabits } from './habits';
import { assessRound } from './round';
import type { RoundVerdict } from './types';

/** Jobs to be judged by what was learned, with what their habits are looked at by. */
export interface JobsTask {
  jobs: readonly Job[];
  learned: Learned;
  firsts: FirstReadings | undefined;
}

export interface JudgedJobs {
  rounds: RoundVerdict[];
  /** By technician. */
  tallies: Map<string, HabitTally>;
}

/** Jobs of one part. Sums are made part by part wherever they are made, so that their last digit is the same. */
export const PART = 20;

/** The verdicts of one part as far as the batch report tells them, and its habits’ sums. */
export function judgeJobs({ jobs, learned, firsts }: JobsTask): JudgedJobs {
  const judged = jobs.map((job) => judgeJob(job, learned, firsts));
  return {
    rounds: judged.flatMap(({ rounds }) => rounds),
    tallies: sumByTechnician(judged.map(({ tallies }) => tallies)),
  };
}

/** The same of one job. */
export function judgeJob(job: Job, learned: Learned, firsts: FirstReadings | undefined): JudgedJobs {
  const rounds = job.rounds.map((round) => assessRound(round, learned, { brief: true }));
  return { rounds, tallies: tallyHabits(job, rounds, firsts?.get(job.job)) };
}
