import type { Job } from '@/lib/measure';
import type { StoredFit } from './stored-fit';

/**
 * New or changed rounds as a share of those that were learned from. A share s of new rounds moves an estimate by about
 * √s of its standard error: 2 % by a seventh of it.
 */
const SHARE = 0.02;
/** So old, a fit is learned anew when anything comes in, ms. */
const OLD = 24 * 60 * 60_000;

/**
 * Whether what was learned should be learned anew, or new rounds can be judged by it: it should where they are more
 * than a share of all, where somebody or some gauge is met for whom nothing was learned, and once a day.
 * @param waiting how many rounds are new or changed since the figures were worked out, and all jobs.
 */
export function dueToLearn(
  fit: Pick<StoredFit, 'learned' | 'learnedAt' | 'unlearned'>,
  waiting: { rounds: number; jobs: readonly Job[] },
  now = Date.now(),
): boolean {
  const { learned, learnedAt, unlearned } = fit;
  if (unlearned + waiting.rounds > SHARE * learned.rounds) return true;
  if (now - learnedAt > OLD) return true;
  return waiting.jobs.some(({ rounds }) =>
    rounds.some(({ setups }) =>
      setups.some(
        ({ technician, gauge, observations }) =>
          learned.technicians[technician] === undefined ||
          (observations.some(({ quantity }) => quantity === 'height') &&
            (learned.technicians[technician].setups === 0 || learned.gauges[gauge] === undefined)),
      ),
    ),
  );
}
