import type { Viewer } from '@/lib/access';
import type { RateJob } from '@/lib/assess/rates';
import { fewQuestions, onceFor } from '@/lib/memory';
import type { RateQuestion } from './question';
import { allRateJobs } from './rates-for';
import { jobsOfGroup, selectJobs } from './select-jobs';

/** The jobs that one group of the question counts, or all of them. @throws Refused */
export async function jobsBehind(
  viewer: Viewer,
  question: RateQuestion,
  group: string | undefined,
): Promise<readonly RateJob[]> {
  return behind(await allRateJobs(viewer))({ question, group });
}

const behind = onceFor((all: readonly RateJob[]) =>
  fewQuestions(
    ({ question, group }: { question: RateQuestion; group: string | undefined }): readonly RateJob[] => {
      const jobs = selectJobs(all, question);
      return group === undefined ? jobs : jobsOfGroup(jobs, question.by, group);
    },
  ),
);
