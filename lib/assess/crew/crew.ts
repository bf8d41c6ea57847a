import { type Pass, type Tally, tallyPart } from '../learn';
import { judgeJobs, type JudgedJobs, type JobsTask } from './judge-jobs';

/** Whoever works out what can be worked out apart from everything else. */
export interface Crew {
  tally: (pass: Pass) => Promise<Tally>;
  judge: (task: JobsTask) => Promise<JudgedJobs>;
  close: () => Promise<void>;
}

/** On this thread, one after the other. */
export const alone: Crew = {
  tally: (pass) => Promise.resolve(tallyPart(pass)),
  judge: (task) => Promise.resolve(judgeJobs(task)),
  close: () => Promise.resolve(),
};
