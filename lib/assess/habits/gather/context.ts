import type { Job, Round, Setup } from '@/lib/measure/types';
import type { RoundVerdict } from '@/lib/assess/types';
import type { Shown } from '../shown';
import type { Sheaf } from './sheaf';

/** One round with what was said of it, and the sheaf of whoever hung a setup. */
export interface RoundContext {
  job: Job;
  round: Round;
  /** Null where the round was not judged. */
  verdict: RoundVerdict | null;
  /** Deviations of first readings, by `firstKey`. */
  firsts: ReadonlyMap<string, number>;
  sheafOf: (technician: string) => Sheaf;
  /** What was made of a setup for one habit serves for all that it shows. */
  known: Map<Setup, Shown>;
}

export function shownOf({ job, known }: RoundContext, setup: Setup): Shown {
  let shown = known.get(setup);
  if (shown === undefined) {
    shown = { label: `${job.job}/${setup.label}`, at: setup.takenAt };
    known.set(setup, shown);
  }
  return shown;
}

/** Heights of a round count where its center section carries the datum. */
export const isDecided = ({ verdict }: RoundContext): boolean => verdict?.decidable ?? true;

/** Beyond these a deviation is damage or a gross mis-set; it counts as this much. mm. */
export const CLIP = { height: 5, length: 10 };

export const clipped = (mm: number, clip: number): number => Math.max(-clip, Math.min(clip, mm));
