import type { Job } from '@/lib/measure';
import type { Learned } from '../cause/learned';
import { bodyPrior, finalJob, type BodyPrior } from '../measuring-risk';
import type { ShopUsage } from '../what-if';
import { OrdinaryJob, ordinaryIn, type Rests } from './ordinary-job';

/** Where bodies are after a repair is learned from so many of the newest jobs: it takes a moment for each. */
const NEWEST = 1_000;

/** How the shop works, from the jobs that it was learned from: what risks and what-if rest on beside the hands. */
export interface AtWork {
  bodies: BodyPrior;
  /** Null where there is no ordinary job. */
  usage: ShopUsage | null;
  /** From the first setup to the last; null without one. */
  rests: Rests | null;
}

/** Belongs to learning, as the hands do: it looks at every job. @param jobs in the order of time */
export function atWork(jobs: readonly Job[], learned: Learned): AtWork {
  const ordinary = new OrdinaryJob();
  for (const job of jobs) ordinary.add(ordinaryIn(job));
  const final = jobs.flatMap((job) => finalJob(job, learned) ?? []).slice(-NEWEST);
  return {
    bodies: bodyPrior(final.flatMap(({ dimensions }) => dimensions)),
    usage: ordinary.usage(),
    rests: ordinary.rests(),
  };
}
