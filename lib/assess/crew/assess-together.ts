import type { Job } from '@/lib/measure/types';
import { assessment, type ShopOptions } from '../assess-shop';
import type { ShopAssessment } from '../shop-assessment';
import type { RoundVerdict } from '../types';
import type { Crew } from './crew';
import { partsOfJobs } from './judge-jobs';
import { learnTogether } from './learn-together';
import { TallySums } from './tally-sums';

interface Telling {
  onJudged?: (jobs: number) => void;
  /**
   * Takes the verdicts of each part of the jobs as they come, in any order. They are not held then: of a large shop
   * they take more room than all its readings, and `rounds` of the assessment is empty.
   */
  onRounds?: (part: number, rounds: RoundVerdict[]) => void;
}

/** `assessShop` by a crew, the same to the last digit. */
export async function assessShopTogether(
  crew: Crew,
  jobs: readonly Job[],
  { onJudged, onRounds, ...options }: ShopOptions & Telling = {},
): Promise<ShopAssessment> {
  const learned = await learnTogether(crew, jobs, options);
  let judged = 0;
  const sums = new TallySums();
  const kept = await Promise.all(
    partsOfJobs({ jobs, learned, firsts: options.firsts }).map(async (of, part) => {
      const { rounds, tallies } = await crew.judge(of);
      sums.add(part, tallies);
      onJudged?.((judged += of.jobs.length));
      if (onRounds === undefined) return rounds;
      onRounds(part, rounds);
      return [];
    }),
  );
  return assessment(jobs, learned, { rounds: kept.flat(), tallies: sums.all() });
}
