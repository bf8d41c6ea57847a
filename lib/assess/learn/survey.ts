import type { Job, Setup } from '@/lib/measure/types';

/** What learning is told of all jobs, beside the rounds that it looks at. */
export interface Survey {
  /** Everybody who hung a gauge, with the setups that read heights. */
  heightSetups: Map<string, number>;
  /** Gauges that were hung for heights. */
  gauges: Set<string>;
  /** Repeats with the gauge untouched, by technician. */
  within: Map<string, Within>;
  /** Deviations of the heights away from the zero stations, mm. */
  deviations: number[];
}

/** Within-setup sums of squares and degrees of freedom of one technician. */
export interface Within {
  ss: number;
  df: number;
}

/**
 * The same of some jobs. Sums of squares stand one by one: added up in the order of the jobs, whoever looked at which,
 * their sum is the same to the last digit.
 */
export interface SurveyedJobs extends Omit<Survey, 'within'> {
  within: Map<string, { squares: number[]; df: number }>;
}

/** @param jobs one after another: none is needed once the next was asked for. */
export function surveyJobs(jobs: Iterable<Job>): SurveyedJobs {
  const found: SurveyedJobs = {
    heightSetups: new Map(),
    gauges: new Set(),
    within: new Map(),
    deviations: [],
  };
  for (const { rounds } of jobs)
    for (const { setups } of rounds) for (const setup of setups) add(found, setup);
  return found;
}

function add(found: SurveyedJobs, { technician, gauge, observations }: Setup): void {
  const within = found.within.get(technician) ?? { squares: [], df: 0 };
  found.within.set(technician, within);
  let heights = false;
  for (const { quantity, zero, deviation, n, ss } of observations) {
    if (n > 1) within.squares.push(ss);
    within.df += n - 1;
    if (quantity !== 'height') continue;
    heights = true;
    if (!zero) found.deviations.push(deviation);
  }
  found.heightSetups.set(technician, (found.heightSetups.get(technician) ?? 0) + (heights ? 1 : 0));
  if (heights) found.gauges.add(gauge);
}

/** @param parts in the order of their jobs. */
export function surveyOf(parts: Iterable<SurveyedJobs>): Survey {
  const survey: Survey = {
    heightSetups: new Map(),
    gauges: new Set(),
    within: new Map(),
    deviations: [],
  };
  for (const part of parts) {
    for (const [technician, setups] of part.heightSetups)
      survey.heightSetups.set(technician, (survey.heightSetups.get(technician) ?? 0) + setups);
    for (const gauge of part.gauges) survey.gauges.add(gauge);
    for (const [technician, { squares, df }] of part.within) {
      const sum = survey.within.get(technician) ?? { ss: 0, df: 0 };
      survey.within.set(technician, sum);
      for (const ss of squares) sum.ss += ss;
      sum.df += df;
    }
    for (const deviation of part.deviations) survey.deviations.push(deviation);
  }
  return survey;
}
