import type { Job } from '@/lib/measure/types';
import { assessment, type ShopOptions } from '../assess-shop';
import type { ShopAssessment } from '../shop-assessment';
import type { Crew } from './crew';
import { partsOfJobs } from './judge-jobs';
import { learnTogether } from './learn-together';

/** `assessShop` by a crew, the same to the last digit. */
export async function assessShopTogether(
  crew: Crew,
  jobs: readonly Job[],
  { onJudged, ...options }: ShopOptions & { onJudged?: (jobs: number) => void } = {},
): Promise<ShopAssessment> {
  const learned = await learnTogether(crew, jobs, options);
  let judged = 0;
  const parts = await Promise.all(
    partsOfJobs({ jobs, learned, firsts: options.firsts }).map(async (of) => {
      const part = await crew.judge(of);
      onJudged?.((judged += of.jobs.length));
      return part;
    }),
  );
  return assessment(jobs, learned, parts);
}
