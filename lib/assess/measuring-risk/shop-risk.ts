import { poissonBinomial } from '@/lib/stats';
import { bodyPrior } from './body-prior';
import { jobRisk } from './job-risk';
import type { BodyPrior, ExpectedCount, FinalJob, JobRisk, ShopRisk } from './types';

const METHOD =
  'For each job the probability that every dimension is truly within tolerance, given its readings, the known sds of ' +
  'reading and setting, and how repairs in this shop come out (learned from its own final deviations). Errors that the ' +
  'dimensions of a job share (the datum, a setup, what is unknown of a bias) are integrated over, not counted again in ' +
  'each. The limits are those of a count with these probabilities; the sds themselves are taken as known. A zero gauge ' +
  'that was mis-set is not in it: the verdicts are there for that.';

/**
 * What measuring error does to the right-first-time rate of a shop: how many of the jobs called right are expected not to
 * be, how many called not right were right, and how many of those were worked on again.
 */
export function shopRisk(jobs: readonly FinalJob[], prior?: BodyPrior): ShopRisk {
  const known = prior ?? bodyPrior(jobs.flatMap(({ dimensions }) => dimensions));
  return riskOf(
    jobs.map((job) => jobRisk(job, known)),
    known,
  );
}

/** The same from the risks of the jobs, each by this prior. */
export function riskOf(risks: readonly JobRisk[], prior: BodyPrior): ShopRisk {
  const right = risks.filter(({ calledRight }) => calledRight);
  const wrong = risks.filter(({ calledRight }) => !calledRight);
  const again = wrong.filter((risk) => risk.again);
  const wronglyRight = countOf(right, ({ trulyRight }) => 1 - trulyRight);
  const wronglyNotRight = countOf(wrong, ({ trulyRight }) => trulyRight);
  const workedOnAgain = countOf(again, ({ trulyRight }) => trulyRight);
  const all = countOf(risks, ({ trulyRight }) => trulyRight);
  const share = (count: number | null) => (count === null ? null : count / risks.length);
  return {
    wronglyRight,
    wronglyNotRight,
    workedOnAgain,
    trueRate: { expected: share(all.expected), low: share(all.low), high: share(all.high) },
    calledRate: risks.length === 0 ? null : right.length / risks.length,
    jobs: [...risks],
    prior,
    sentence: sentence(wronglyRight, wronglyNotRight, workedOnAgain),
    method: METHOD,
  };
}

function countOf(jobs: readonly JobRisk[], chance: (job: JobRisk) => number): ExpectedCount {
  if (jobs.length === 0) return { of: 0, expected: null, low: null, high: null };
  const count = poissonBinomial(jobs.map((job) => Math.min(1, Math.max(0, chance(job)))));
  return {
    of: jobs.length,
    expected: count.mean,
    low: count.quantile(0.025),
    high: count.quantile(0.975),
  };
}

function sentence(right: ExpectedCount, wrong: ExpectedCount, again: ExpectedCount): string {
  if (right.of + wrong.of === 0) return 'No job has a first measuring after the repair.';
  const first =
    right.expected === null
      ? 'No job was called right.'
      : `Of ${jobs(right.of)} called right, ${number(right)} are expected not to be.`;
  if (wrong.expected === null) return `${first} No job was called not right.`;
  const worked =
    again.expected === null
      ? 'none of them was worked on again'
      : `${number(again)} of them were worked on again`;
  return `${first} Of ${jobs(wrong.of)} called not right, ${number(wrong)} are expected to have been right; ${worked}.`;
}

const jobs = (count: number): string => (count === 1 ? '1 job' : `${count} jobs`);
const number = ({ expected, low, high }: ExpectedCount): string =>
  `${(expected ?? 0).toFixed(1)} (${low ?? 0} to ${high ?? 0})`;
