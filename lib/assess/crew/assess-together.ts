import type { Job } from '@/lib/measure/types';
import { assessment, type ShopOptions } from '../assess-shop';
import { MeasuredSums } from '../measured';
import type { ShopAssessment } from '../shop-assessment';
import type { RoundVerdict } from '../types';
import type { Crew } from './crew';
import { type JobsTask, type JudgedJobs, partsOfJobs } from './judge-jobs';
import { learnTogether } from './learn-together';
import { TallySums } from './tally-sums';

interface Telling {
  onJudged?: ((jobs: number) => void) | undefined;
  /**
   * Takes the verdicts of each part of the jobs as they come, in any order. They are not held then: of a large shop
   * they take more room than all its readings, and `rounds` of the assessment is empty.
   */
  onRounds?: ((part: number, rounds: RoundVerdict[]) => void) | undefined;
}

/** `assessShop` by a crew, the same to the last digit. */
export async function assessShopTogether(
  crew: Crew,
  jobs: readonly Job[],
  { onJudged, onRounds, ...options }: ShopOptions & Telling = {},
): Promise<ShopAssessment> {
  const learned = await learnTogether(crew, jobs, options);
  const measured = MeasuredSums.of(jobs);
  // From here on jobs are held part by part, each until it is judged.
  const parts = partsOfJobs({ jobs, learned, firsts: options.firsts });
  return judgeTogether(crew, parts, { onJudged, onRounds }).then((judged) =>
    assessment(measured, learned, judged),
  );
}

async function judgeTogether(
  crew: Crew,
  parts: readonly JobsTask[],
  { onJudged, onRounds }: Telling,
): Promise<JudgedJobs> {
  let jobs = 0;
  const sums = new TallySums();
  const kept = parts.map(async (of, part) => {
    const { length } = of.jobs;
    const { rounds, tallies } = await crew.judge(of);
    sums.add(part, tallies);
    onJudged?.((jobs += length));
    if (onRounds === undefined) return rounds;
    onRounds(part, rounds);
    return [];
  });
  return { rounds: (await Promise.all(kept)).flat(), tallies: sums.all() };
}
