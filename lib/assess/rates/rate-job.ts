import type { Job, Section } from '@/lib/measure';
import { monthOf } from '@/lib/measure/month-of';
import { firstTimeOutcome } from '../right-first-time';
import { jobStart, type JobStart } from './job-start';

/** One job as every rate needs it: how it came out the first time, whose it was, and how hard it was. Additive. */
export interface RateJob {
  job: string;
  /** Who began the first measuring after the repair. */
  technician: string;
  sheet: string | null;
  /** Of that measuring, in the shop's time zone, `2025-06`. */
  month: string;
  /** Asset tags that hung in that measuring, each once. */
  gauges: string[];
  right: boolean;
  /** The sections that were measured, and whether all of each is within. */
  sections: { section: Section; right: boolean }[];
  start: JobStart;
}

/**
 * Null where the job has no first measuring after the repair: it is neither right nor wrong.
 * @param outcome of this job, where it is known already
 */
export function rateJob(job: Job, timeZone = 'UTC', outcome = firstTimeOutcome(job)): RateJob | null {
  if (outcome === null) return null;
  const round = job.rounds.find(({ stage, attempt }) => stage === 'after' && attempt === 1);
  return {
    job: job.job,
    technician: outcome.technician,
    sheet: outcome.sheet,
    month: monthOf(outcome.at, timeZone),
    gauges: [...new Set((round?.setups ?? []).map(({ gauge }) => gauge))].sort(),
    right: outcome.right,
    sections: outcome.sections,
    start: jobStart(job),
  };
}
