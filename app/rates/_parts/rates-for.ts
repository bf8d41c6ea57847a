import { cache } from 'react';
import { rateJobs, ratesAnswer, type Viewer } from '@/lib/access';
import { fairRates, type FairRates, type RateJob } from '@/lib/assess/rates';
import { isFiltered, type RateQuestion } from './question';
import { selectJobs } from './select-jobs';

/** All jobs that a rate may count, read once a page. */
export const allRateJobs = cache((viewer: Viewer): Promise<RateJob[]> => rateJobs(viewer));

/** The rates asked for: kept ready for all jobs, worked out at once for a part of them. Null before the first answer. */
export async function ratesFor(viewer: Viewer, question: RateQuestion): Promise<FairRates | null> {
  if (!isFiltered(question)) return (await ratesAnswer(viewer))?.[question.by] ?? null;
  return fairRates(selectJobs(await allRateJobs(viewer), question), question.by);
}
