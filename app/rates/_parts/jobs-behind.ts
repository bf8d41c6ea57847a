import type { Viewer } from '@/lib/access';
import type { RateJob } from '@/lib/assess/rates';
import type { RateQuestion } from './question';
import { allRateJobs } from './rates-for';
import { jobsOfGroup, selectJobs } from './select-jobs';

/** The jobs that one group of the question counts, or all of them. @throws Refused */
export async function jobsBehind(
  viewer: Viewer,
  question: RateQuestion,
  group: string | undefined,
): Promise<RateJob[]> {
  const jobs = selectJobs(await allRateJobs(viewer), question);
  return group === undefined ? jobs : jobsOfGroup(jobs, question.by, group);
}
