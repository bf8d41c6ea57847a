import { cache } from 'react';
import { fewQuestions, frozen, onceFor } from '@/lib/memory';
import { rateJobs, ratesAnswer, type Viewer } from '@/lib/access';
import { fairRates, type FairRates, type RateJob } from '@/lib/assess/rates';
import { isFiltered, type RateQuestion } from './question';
import { selectJobs } from './select-jobs';

/** All jobs that a rate may count, read once a page. */
export const allRateJobs = cache((viewer: Viewer): Promise<readonly RateJob[]> => rateJobs(viewer));

/** Rates of a part of some jobs: a model of how hard they were is fitted to them, which takes longer than the page. */
const ratesOfPart = onceFor((jobs: readonly RateJob[]) =>
  fewQuestions((question: RateQuestion): FairRates =>
    frozen(fairRates(selectJobs(jobs, question), question.by)),
  ),
);

/** The rates asked for: kept ready for all jobs, worked out at once for a part of them. Null before the first answer. */
export async function ratesFor(viewer: Viewer, question: RateQuestion): Promise<FairRates | null> {
  if (!isFiltered(question)) return (await ratesAnswer(viewer))?.[question.by] ?? null;
  return ratesOfPart(await allRateJobs(viewer))(question);
}
