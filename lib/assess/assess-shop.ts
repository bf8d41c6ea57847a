import type { Job } from '@/lib/measure';
import { gaugeFigures, technicianFigures } from './figures';
import { type FirstReadings, shopHabits } from './habits';
import { learn, type LearnOptions } from './learn';
import { firstTimeOutcomes, rateOf } from './right-first-time';
import { assessRound } from './round';
import type { ShopAssessment } from './shop-assessment';

export interface ShopOptions extends LearnOptions {
  /** First readings of dimensions read more than once (`firstReadings`): last digits are looked at by them. */
  firsts?: FirstReadings;
}

/** Everything that is computed of a shop's jobs, from nothing but the jobs. */
export function assessShop(jobs: readonly Job[], options: ShopOptions = {}): ShopAssessment {
  const learned = learn(jobs, options);
  const rounds = jobs.flatMap((job) => job.rounds.map((round) => assessRound(round, learned)));
  const habits = shopHabits(jobs, rounds, options.firsts);
  return {
    technicians: technicianFigures(jobs, learned).map((figures) => ({
      ...figures,
      habits: habits.get(figures.technician) ?? [],
    })),
    gauges: gaugeFigures(jobs, learned),
    rounds,
    firstTimeRight: rateOf(firstTimeOutcomes(jobs)),
  };
}
