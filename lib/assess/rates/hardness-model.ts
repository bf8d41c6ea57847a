import { logisticRegression, type LogisticCoefficient } from '@/lib/stats';
import type { RateJob } from './rate-job';

/** How the chance of being right first time goes with what a job started with. */
export interface HardnessModel {
  /** Chance of each job, in the order given, at the shop's rate for jobs as hard. */
  chances: number[];
  /** On the log-odds scale, each with a 95 % interval; empty where there is no fit. */
  coefficients: LogisticCoefficient[];
  /** Covariates that are the same in every job and so say nothing. */
  leftOut: string[];
  method: string;
  /** Why every job has the shop's rate instead. */
  why: string | null;
}

const METHOD =
  'Logistic regression of right first time on what the job started with: ln(1 + dimensions out before the repair), ' +
  'ln(1 + the largest of them in tolerances), whether most of the damage was in the center or the rear section ' +
  '(against the front or nothing), and whether nothing was measured before. Coefficients are drawn a little to zero ' +
  '(ridge 0.16), so that few jobs cannot make them wild.';

/** With fewer jobs than this the covariates explain noise. */
const LEAST_JOBS = 30;

/** The chance of each job by how hard it was. One model for the shop, so it holds no group to its own record. */
export function hardnessModel(jobs: readonly RateJob[]): HardnessModel {
  const right = jobs.filter((job) => job.right).length;
  const overall = jobs.length === 0 ? 0 : right / jobs.length;
  const flat = (why: string): HardnessModel => ({
    chances: jobs.map(() => overall),
    coefficients: [],
    leftOut: [],
    method: METHOD,
    why,
  });
  if (jobs.length < LEAST_JOBS) {
    return flat(`Adjusting for how hard the jobs were takes ${LEAST_JOBS} jobs; there are ${jobs.length}.`);
  }
  const all = Object.entries(COVARIATES).map(([name, of]) => ({ name, values: jobs.map(of) }));
  const varying = all.filter(({ values }) => values.some((value) => value !== values[0]));
  const fit = logisticRegression({
    successes: jobs.map((job) => (job.right ? 1 : 0)),
    covariates: Object.fromEntries(varying.map(({ name, values }) => [name, values])),
  });
  if (fit.fitted === null) return flat(fit.why ?? 'The model could not be fitted.');
  return {
    chances: fit.fitted,
    coefficients: fit.coefficients ?? [],
    leftOut: all.filter((one) => !varying.includes(one)).map(({ name }) => name),
    method: METHOD,
    why: null,
  };
}

const COVARIATES: Record<string, (job: RateJob) => number> = {
  'dimensions out, ln(1 + n)': ({ start }) => Math.log1p(start.out),
  'largest deviation, ln(1 + tolerances)': ({ start }) => Math.log1p(start.size),
  'most in the center section': ({ start }) => (start.zone === 'center' ? 1 : 0),
  'most in the rear section': ({ start }) => (start.zone === 'rear' ? 1 : 0),
  'nothing measured before': ({ start }) => (start.measured ? 0 : 1),
};
