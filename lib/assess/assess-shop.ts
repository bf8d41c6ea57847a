import type { Job } from '@/lib/measure';
import type { Learned } from './cause/learned';
import { inParts } from '@/lib/measure/in-parts';
import { judgeJobs, type JudgedJobs, PART } from './judge-jobs';
import { gaugeFigures, technicianFigures } from './figures';
import { type FirstReadings, habitsFound, sumByTechnician } from './habits';
import { learn, type LearnOptions } from './learn';
import { MeasuredSums } from './measured';
import { rateOf } from './right-first-time';
import type { ShopAssessment } from './shop-assessment';

export interface ShopOptions extends LearnOptions {
  /** First readings of dimensions read more than once (`firstReadings`): last digits are looked at by them. */
  firsts?: FirstReadings;
}

/** Everything that is computed of a shop's jobs, from nothing but the jobs. The verdicts are without patterns. */
export function assessShop(jobs: readonly Job[], options: ShopOptions = {}): ShopAssessment {
  const learned = learn(jobs, options);
  const parts = inParts(jobs, PART).map((own) => judgeJobs({ jobs: own, learned, firsts: options.firsts }));
  return assessment(MeasuredSums.of(jobs), learned, {
    rounds: parts.flatMap(({ rounds }) => rounds),
    tallies: sumByTechnician(parts.map(({ tallies }) => tallies)),
  });
}

/** From the sums of what was measured, what was learned, the verdicts on all jobs and the sums of their habits. */
export function assessment(
  measured: MeasuredSums,
  learned: Learned,
  { rounds, tallies }: JudgedJobs,
): ShopAssessment {
  const habits = habitsFound(tallies);
  return {
    technicians: technicianFigures(measured, learned).map((figures) => ({
      ...figures,
      habits: habits.get(figures.technician) ?? [],
    })),
    gauges: gaugeFigures(measured, learned),
    rounds,
    firstTimeRight: rateOf(measured.outcomes),
  };
}
