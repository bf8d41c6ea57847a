import type { Job } from '@/lib/measure';
import type { Learned } from '../cause/learned';
import { tallyHabits } from '../habits';
import { measuredIn, type Measured } from '../measured';
import { finalJob, type FinalJob } from '../measuring-risk';
import { rateJob, type RateJob } from '../rates';
import type { RoundVerdict } from '../types';
import { missetsIn, type MissetCount } from './misset-counts';
import { roundsIn, type MonthShare } from './month-sums';
import { ordinaryIn, type OrdinaryShare } from './ordinary-job';
import { settingErrors } from './setting-errors';

/** Grows when shares of before can no longer be added to those of now. */
export const JOB_SHARE_FORMAT = 1;

/**
 * All that one job adds to the answers to the shop's questions. Kept with the job, so that a new reading costs the work
 * of its own job: the others are added up from what is kept. Plain JSON.
 */
export interface JobShare extends MonthShare {
  job: string;
  measured: Measured;
  /** Null without a first measuring after the repair. */
  rate: RateJob | null;
  final: FinalJob | null;
  missets: [technician: string, count: MissetCount][];
  ordinary: OrdinaryShare;
}

/** What a share is made with, beside the job. */
export interface ShareContext {
  learned: Learned;
  timeZone: string;
  /** On the rounds of this job. */
  verdicts: readonly RoundVerdict[];
  /** Of this job, as `firstReadings` gives them. */
  firsts: ReadonlyMap<string, number> | undefined;
}

/** Null for a job without a setup. */
export function jobShare(job: Job, { learned, timeZone, verdicts, firsts }: ShareContext): JobShare | null {
  const begunAt = job.rounds[0]?.setups[0]?.takenAt;
  if (begunAt === undefined) return null;
  const measured = measuredIn(job);
  return {
    job: job.job,
    begunAt,
    sheet: job.sheet,
    measured,
    rate: rateJob(job, timeZone, measured.outcome),
    final: finalJob(job, learned),
    tallies: [...tallyHabits(job, verdicts, firsts)],
    rounds: roundsIn(job, settingErrors(job, verdicts)),
    missets: missetsIn(job, verdicts, timeZone),
    ordinary: ordinaryIn(job),
  };
}
