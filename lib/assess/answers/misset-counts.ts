import type { Job } from '@/lib/measure';
import { monthOf } from '@/lib/measure/month-of';
import type { RoundVerdict } from '../types';
import { within } from './within';

/** A setup counts as likely mis-set when one of its heights is, more likely than not. */
const LIKELY = 0.5;

/** Setups of one hand with one gauge in one month, away from the zero stations. */
export interface MissetCount {
  /** `2025-03`, in the shop's time zone, by when the gauge was hung. */
  month: string;
  gauge: string;
  setups: number;
  /** Those that were likely off by more than the tolerance. */
  misset: number;
}

/** Of one job, by technician. @param verdicts on the rounds of this job. */
export function missetsIn(
  job: Job,
  verdicts: readonly RoundVerdict[],
  timeZone: string,
): [technician: string, count: MissetCount][] {
  return job.rounds.flatMap((round) => {
    const verdict = verdicts.find(({ stage, attempt }) => stage === round.stage && attempt === round.attempt);
    const likely = new Map<string, boolean>();
    for (const { setup, zero, p } of verdict?.heights ?? [])
      if (!zero) likely.set(setup, p.gauge + p.both > LIKELY || (likely.get(setup) ?? false));
    return round.setups.flatMap(({ label, technician, gauge, takenAt }): [string, MissetCount][] => {
      const misset = likely.get(label);
      if (misset === undefined) return [];
      const month = monthOf(takenAt, timeZone);
      return [[technician, { month, gauge, setups: 1, misset: Number(misset) }]];
    });
  });
}

/** Counts of one technician added up by month and gauge, in the order of months, then of gauges. */
export function addedCounts(counts: Iterable<MissetCount>): MissetCount[] {
  const sums = new Map<string, MissetCount>();
  for (const { month, gauge, setups, misset } of counts) {
    const sum = within(sums, JSON.stringify([month, gauge]), () => ({ month, gauge, setups: 0, misset: 0 }));
    sum.setups += setups;
    sum.misset += misset;
  }
  return [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, sum]) => sum);
}
