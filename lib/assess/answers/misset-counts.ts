import type { Job } from '@/lib/measure';
import { monthOf } from '@/lib/measure/month-of';
import type { RoundVerdict } from '../types';

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

/** Likely mis-sets by technician, month and gauge: their number follows the months, not the setups. */
export class MissetCounts {
  readonly #timeZone: string;
  readonly #counts = new Map<string, Map<string, MissetCount>>();

  constructor(timeZone: string) {
    this.#timeZone = timeZone;
  }

  /** @param verdicts on the rounds of this job. */
  add(job: Job, verdicts: readonly RoundVerdict[]): void {
    for (const round of job.rounds) {
      const verdict = verdicts.find(
        ({ stage, attempt }) => stage === round.stage && attempt === round.attempt,
      );
      const likely = new Map<string, boolean>();
      for (const { setup, zero, p } of verdict?.heights ?? [])
        if (!zero) likely.set(setup, p.gauge + p.both > LIKELY || (likely.get(setup) ?? false));
      for (const { label, technician, gauge, takenAt } of round.setups) {
        const misset = likely.get(label);
        if (misset !== undefined) this.#count(technician, gauge, takenAt, misset);
      }
    }
  }

  #count(technician: string, gauge: string, at: number, misset: boolean): void {
    const month = monthOf(at, this.#timeZone);
    const own = this.#counts.get(technician) ?? new Map<string, MissetCount>();
    this.#counts.set(technician, own);
    const key = JSON.stringify([month, gauge]);
    const known = own.get(key) ?? { month, gauge, setups: 0, misset: 0 };
    own.set(key, { ...known, setups: known.setups + 1, misset: known.misset + Number(misset) });
  }

  /** In the order of months, then of gauges. */
  of(technician: string): MissetCount[] {
    return [...(this.#counts.get(technician) ?? [])]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([, count]) => count);
  }
}
