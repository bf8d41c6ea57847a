import type { MeasuredSums } from '@/lib/assess';
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
 * @param waiting how many rounds are new or changed since the figures were worked out, and what all jobs come to.
 */
export function dueToLearn(
  fit: Pick<StoredFit, 'learned' | 'learnedAt' | 'unlearned'>,
  waiting: { rounds: number; measured: MeasuredSums },
  now = Date.now(),
): boolean {
  const { learned, learnedAt, unlearned } = fit;
  if (unlearned + waiting.rounds > SHARE * learned.rounds) return true;
  if (now - learnedAt > OLD) return true;
  const { technicians, gauges } = learned;
  return (
    waiting.measured.hands().some(({ technician, heights }) => {
      const hand = technicians[technician];
      return hand === undefined || (heights > 0 && hand.setups === 0);
    }) || waiting.measured.gauges().some(({ gauge, heights }) => heights > 0 && gauges[gauge] === undefined)
  );
}
