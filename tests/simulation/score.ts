import { assessRound, type Learned } from '@/lib/assess';
import type { Cause, Job } from '@/lib/measure/types';
import type { SimulatedShop } from './shop';

const CAUSES: Cause[] = ['neither', 'gauge', 'body', 'both'];

/** A verdict on a height away from the zero stations, and what it really was. */
export interface Scored {
  p: Record<Cause, number>;
  truth: Cause;
}

/** Verdicts on all heights of `jobs` that are not at zero stations, with their truth. */
export function scored(shop: SimulatedShop, jobs: readonly Job[], learned: Learned): Scored[] {
  return jobs.flatMap((job) =>
    job.rounds.flatMap((round) =>
      assessRound(round, learned).heights.flatMap((height) => {
        const truth = shop.truth.get(
          `${round.job} ${round.stage} ${round.attempt} ${height.setup} ${height.side}`,
        );
        return truth && !truth.zero ? [{ p: height.p, truth: truth.cause }] : [];
      }),
    ),
  );
}

/** Mean of −ln p of what was true. */
export const logLoss = (all: readonly Scored[]): number =>
  -all.reduce((sum, { p, truth }) => sum + Math.log(Math.max(p[truth], 1e-12)), 0) / all.length;

/** The log loss of someone who knows nothing but how often each class comes up among these heights. */
export function classRatesLoss(all: readonly Scored[]): number {
  const rate = (cause: Cause): number => all.filter(({ truth }) => truth === cause).length / all.length;
  return -CAUSES.reduce((sum, cause) => sum + (rate(cause) > 0 ? rate(cause) * Math.log(rate(cause)) : 0), 0);
}

/** Expected calibration error: mean |called − came true| over ten bins of probability, all four classes pooled. */
export function calibrationError(all: readonly Scored[]): number {
  const bins = Array.from({ length: 10 }, () => ({ called: 0, came: 0, count: 0 }));
  for (const { p, truth } of all) {
    for (const cause of CAUSES) {
      const bin = bins[Math.min(9, Math.floor(p[cause] * 10))];
      if (!bin) continue;
      bin.called += p[cause];
      bin.came += truth === cause ? 1 : 0;
      bin.count++;
    }
  }
  return bins.reduce((sum, { called, came }) => sum + Math.abs(called - came), 0) / (4 * all.length);
}

/** Of the heights with damage, the share that was called gauge at 0.8 or more. */
export function damageCalledGauge(all: readonly Scored[]): number {
  const damaged = all.filter(({ truth }) => truth === 'body' || truth === 'both');
  return damaged.filter(({ p }) => p.gauge >= 0.8).length / damaged.length;
}
