import { grouped } from '@/lib/measure/grouped';
import { addWeighted, mergeCollapsed, NO_WEIGHT, varianceRoot, type WeightedSum } from '@/lib/stats';
import { MeasuredSums, type HandSums, type MeasuredByGauge } from '../measured';
import type { JobRisk } from '../measuring-risk';
import type { RateJob } from '../rates';
import type { JobShare } from './job-share';
import { addedCounts, type MissetCount } from './misset-counts';
import type { SettingError } from './setting-errors';

/**
 * What of the jobs of one month adds up to the answers, beside habits and hands. What is of a whole job counts in the
 * month in which it was begun, what is of a round in the month of the round. Plain JSON.
 */
export interface WorkMonth {
  /** The numbers of all jobs that count here, in the order of time. */
  jobs: string[];
  sheets: string[];
  hands: HandSums[];
  gauges: MeasuredByGauge[];
  rates: RateJob[];
  risks: JobRisk[];
  missets: [technician: string, counts: MissetCount[]][];
  /**
   * The scatter of each technician's setting errors within the rounds, as the sum of squares whose root is the mean of the
   * rounds' own (`varianceRoot`): one round with a small mis-set or a tilted datum in it must not make a month.
   */
  scatter: { technician: string; df: number; ss: number }[];
  /** The mean setting error of each round by gauge, collapsed. */
  gaugeMeans: { gauge: string; n: number; mean: number; ss: number }[];
}

/** One month, job by job in the order of time. */
export class WorkSums {
  readonly #jobs = new Set<string>();
  readonly #sheets = new Set<string>();
  readonly #measured = new MeasuredSums();
  readonly #rates: RateJob[] = [];
  readonly #risks: JobRisk[] = [];
  readonly #missets: [technician: string, count: MissetCount][] = [];
  readonly #scatter = new Map<string, { df: number; roots: WeightedSum }>();
  readonly #gauges = new Map<string, WorkMonth['gaugeMeans'][number]>();

  /** A job that was begun in this month. */
  addJob({ job, sheet, measured, rate, risk, missets }: JobShare): void {
    this.#jobs.add(job);
    if (sheet !== null) this.#sheets.add(sheet);
    this.#measured.add(measured);
    if (rate !== null) this.#rates.push(rate);
    if (risk !== null) this.#risks.push(risk);
    this.#missets.push(...missets);
  }

  /** The setting errors of a round of this month. */
  addRound(job: string, errors: readonly SettingError[]): void {
    this.#jobs.add(job);
    for (const [technician, own] of grouped(errors, (error) => error.technician)) {
      const mean = meanOf(own);
      const known = this.#scatter.get(technician) ?? { df: 0, roots: NO_WEIGHT };
      const df = own.length - 1;
      const found = varianceRoot({ df, ss: own.reduce((sum, { error }) => sum + (error - mean) ** 2, 0) });
      this.#scatter.set(technician, {
        df: known.df + df,
        roots:
          found === null
            ? known.roots
            : addWeighted(known.roots, { value: found.root, weight: found.weight }),
      });
    }
    for (const [gauge, own] of grouped(errors, (error) => error.gauge)) {
      const known = this.#gauges.get(gauge) ?? { n: 0, mean: 0, ss: 0 };
      const { n, mean, ss } = mergeCollapsed(known, { n: 1, mean: meanOf(own), ss: 0 });
      this.#gauges.set(gauge, { gauge, n, mean, ss });
    }
  }

  told(): WorkMonth {
    return {
      jobs: [...this.#jobs],
      sheets: [...this.#sheets],
      hands: this.#measured.hands(),
      gauges: this.#measured.gauges(),
      rates: this.#rates,
      risks: this.#risks,
      missets: [...grouped(this.#missets, ([technician]) => technician)].map(([technician, own]) => [
        technician,
        addedCounts(own.map(([, count]) => count)),
      ]),
      scatter: [...this.#scatter].map(([technician, { df, roots }]) => {
        const one = varianceRoot({ df, ss: df });
        return { technician, df, ss: one === null ? 0 : df * (roots.mean / one.root) ** 3 };
      }),
      gaugeMeans: [...this.#gauges.values()],
    };
  }
}

const meanOf = (errors: readonly SettingError[]): number =>
  errors.reduce((sum, { error }) => sum + error, 0) / errors.length;
