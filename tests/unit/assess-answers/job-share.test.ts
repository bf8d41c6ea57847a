import { expect, it } from 'vitest';
import { atWork, jobShare, type JobShare } from '@/lib/assess/answers';
import { startingPoint } from '@/lib/assess/cause/learned';
import type { Job } from '@/lib/measure';
import { habitShop } from '@/tests/simulation/habit-shop';

const { jobs } = habitShop({ seed: 7, jobs: 6, hands: { A: {}, B: {} } });
const learned = startingPoint();
const { bodies } = atWork(jobs, learned);
const shareOf = (job: Job, before?: JobShare): JobShare => {
  const context = { learned, bodies, timeZone: 'UTC', verdicts: [], firsts: undefined, before };
  const share = jobShare(job, context);
  if (share === null) throw new Error('The job adds nothing.');
  return share;
};

/** The job with everything that was read in its first or its last round off by a millimetre more. */
function readAgain(job: Job, at: 0 | -1): Job {
  const changed = structuredClone(job);
  for (const { observations } of changed.rounds.at(at)?.setups ?? [])
    for (const one of observations) one.deviation += 1;
  return changed;
}

it.each(jobs.filter(({ rounds }) => rounds.length > 1).map((job) => [job.job, job] as const))(
  'of job %s the risk is taken over where its last round is as it was, and only there',
  (_, job) => {
    const before = shareOf(job);
    if (before.risk === null) throw new Error('The job has no risk.');
    const marked = { ...before, risk: { ...before.risk, trulyRight: -1 } };
    expect(shareOf(readAgain(job, 0), marked).risk).toEqual(marked.risk);
    const changed = readAgain(job, -1);
    expect(shareOf(changed, marked)).toEqual(shareOf(changed));
    expect(shareOf(changed, marked).risk).not.toEqual(before.risk);
  },
);
