import type { Job } from '@/lib/measure';
import { gaugeFigures, technicianFigures } from './figures';
import { learn, type LearnOptions } from './learn';
import { firstTimeOutcomes, rateOf } from './right-first-time';
import { assessRound } from './round';
import type { ShopAssessment } from './shop-assessment';

/** Everything that is computed of a shop's jobs, from nothing but the jobs. */
export function assessShop(jobs: readonly Job[], options: LearnOptions = {}): ShopAssessment {
  const learned = learn(jobs, options);
  return {
    technicians: technicianFigures(jobs, learned),
    gauges: gaugeFigures(jobs, learned),
    rounds: jobs.flatMap((job) => job.rounds.map((round) => assessRound(round, learned))),
    firstTimeRight: rateOf(firstTimeOutcomes(jobs)),
  };
}
