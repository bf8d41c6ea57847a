import type { RiskAnswer } from '@/lib/assess/answers';

type DoubtfulJob = RiskAnswer['jobs'][number];

/** The jobs that are likeliest to be called wrongly, in the order given. */
export function likeliestWrong(jobs: readonly DoubtfulJob[], most: number): DoubtfulJob[] {
  const doubt = ({ calledRight, trulyRight }: DoubtfulJob) => (calledRight ? 1 - trulyRight : trulyRight);
  const chosen = new Set([...jobs].sort((a, b) => doubt(b) - doubt(a)).slice(0, most));
  return jobs.filter((job) => chosen.has(job));
}
