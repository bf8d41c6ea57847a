import { createHash } from 'node:crypto';
import type { Job } from '@/lib/measure';
import type { Learned } from '../cause/learned';
import { tallyHabits, type HabitTally } from '../habits';
import { measuredIn, type Measured } from '../measured';
import { finalJob, jobRisk, type BodyPrior, type FinalJob, type JobRisk } from '../measuring-risk';
import { rateJob, type RateJob } from '../rates';
import type { RoundVerdict } from '../types';
import { missetsIn, type MissetCount } from './misset-counts';
import { roundsIn, type RoundShare } from './month-sums';
import { settingErrors } from './setting-errors';

/** Grows when shares of before can no longer be read, or added to those of now. */
export const JOB_SHARE_FORMAT = 3;

/**
 * All that one job adds to the answers to the shop's questions. Kept with the job, so that a new reading costs the work
 * of its own job: the others are added up from what is kept. Plain JSON.
 */
export interface JobShare {
  job: string;
  /** When the job was begun, epoch ms. */
  begunAt: number;
  sheet: string | null;
  /** By everybody who hung a gauge; null where it was not asked for. */
  tallies: [technician: string, tally: HabitTally | null][];
  rounds: RoundShare[];
  measured: Measured;
  /** Null without a first measuring after the repair. */
  rate: RateJob | null;
  /** What measuring error does to it, its dimensions left out; null as the rate. */
  risk: JobRisk | null;
  /** A word for what it was worked out from. */
  riskFrom: string | null;
  missets: [technician: string, count: MissetCount][];
}

/** What a share is made with, beside the job. */
export interface ShareContext {
  learned: Learned;
  /** Where bodies are after a repair, learned with it. */
  bodies: BodyPrior;
  timeZone: string;
  /** On the rounds of this job. */
  verdicts: readonly RoundVerdict[];
  /** Of this job, as `firstReadings` gives them. */
  firsts: ReadonlyMap<string, number> | undefined;
  /** As it was, made by the same program with the same: what did not change of it is taken over. */
  before?: JobShare | undefined;
}

/** Null for a job without a setup. */
export function jobShare(
  job: Job,
  { learned, bodies, timeZone, verdicts, firsts, before }: ShareContext,
): JobShare | null {
  const begunAt = job.rounds[0]?.setups[0]?.takenAt;
  if (begunAt === undefined) return null;
  const measured = measuredIn(job);
  const final = finalJob(job, learned);
  return {
    job: job.job,
    begunAt,
    sheet: job.sheet,
    measured,
    rate: rateJob(job, timeZone, measured.outcome),
    ...riskIn(final, bodies, before),
    tallies: [...tallyHabits(job, verdicts, firsts)],
    rounds: roundsIn(job, settingErrors(job, verdicts)),
    missets: missetsIn(job, verdicts, timeZone),
  };
}

/** Some milliseconds, which a reading that leaves the last round as it was need not take. */
function riskIn(
  final: FinalJob | null,
  bodies: BodyPrior,
  before: JobShare | undefined,
): Pick<JobShare, 'risk' | 'riskFrom'> {
  if (final === null) return { risk: null, riskFrom: null };
  const riskFrom = createHash('sha256').update(JSON.stringify(final)).digest('base64');
  if (before?.riskFrom === riskFrom) return { risk: before.risk, riskFrom };
  return { risk: { ...jobRisk(final, bodies), dimensions: [] }, riskFrom };
}
