import type { Job, Round, Section } from '@/lib/measure';
import { recordedDimensions } from '../recorded';
import type { RecordedDimension } from '../types';

/** How the first measuring after the repair of one job came out. */
export interface FirstTimeOutcome {
  job: string;
  sheet: string | null;
  /** Who hung the first setup of that round. */
  technician: string;
  /** When that was, epoch ms. */
  at: number;
  /** Every controlled dimension is within tolerance. */
  right: boolean;
  /** Controlled dimensions, and how many of them are out of tolerance. */
  controlled: number;
  out: number;
  /** The sections that were measured, and whether all of each is within. */
  sections: { section: Section; right: boolean }[];
  /** Dimensions out of tolerance before the repair, in the last round of that stage; null where none was measured. */
  outBefore: number | null;
}

/** All that the rates of technicians take of an outcome. */
export type CountedOutcome = Pick<FirstTimeOutcome, 'technician' | 'right' | 'outBefore'>;

/**
 * A job is right first time when every controlled dimension of `after` attempt 1 is within tolerance, by its last
 * setup. Null where a job has no such round: it is neither right nor wrong.
 */
export function firstTimeOutcome(job: Job): FirstTimeOutcome | null {
  const round = job.rounds.find(({ stage, attempt }) => stage === 'after' && attempt === 1);
  const [first] = round?.setups ?? [];
  if (round === undefined || first === undefined) return null;
  const dimensions = recordedDimensions(round);
  const out = outOfTolerance(dimensions);
  return {
    job: job.job,
    sheet: job.sheet,
    technician: first.technician,
    at: first.takenAt,
    right: out === 0,
    controlled: dimensions.length,
    out,
    sections: sectionsOf(dimensions),
    outBefore: outBefore(job.rounds),
  };
}

export function firstTimeOutcomes(jobs: readonly Job[]): FirstTimeOutcome[] {
  return jobs.flatMap((job) => firstTimeOutcome(job) ?? []);
}

function outOfTolerance(dimensions: readonly RecordedDimension[]): number {
  return dimensions.filter((dimension) => !dimension.within).length;
}

function sectionsOf(dimensions: readonly RecordedDimension[]): { section: Section; right: boolean }[] {
  const sections = new Map<Section, boolean>();
  for (const { section, within } of dimensions) {
    if (section !== null) sections.set(section, (sections.get(section) ?? true) && within);
  }
  return [...sections].map(([section, right]) => ({ section, right }));
}

function outBefore(rounds: readonly Round[]): number | null {
  const last = rounds.filter(({ stage }) => stage === 'before').at(-1);
  return last === undefined ? null : outOfTolerance(recordedDimensions(last));
}
