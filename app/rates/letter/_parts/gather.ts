import { attentionNow, type Attention } from '@/app/_overview/attention';
import { departuresFrom, type Departure } from '@/app/_overview/departures';
import { missCostOf } from '@/app/_shop/miss-cost';
import {
  countExcluded,
  everybodysFigures,
  habitsAnswer,
  newestHanging,
  rateJobs,
  ratesAnswer,
  riskAnswer,
  signalsAnswer,
  type Viewer,
} from '@/lib/access';
import type { RiskAnswer, SignalsAnswer } from '@/lib/assess/answers';
import type { HabitCell } from '@/lib/assess/habits';
import type { FairRate, RateJob } from '@/lib/assess/rates';

/** What a manager is told of one month. */
export interface MonthLetter {
  shop: { name: string; timeZone: string };
  /** `2026-03`. */
  month: string;
  /** Jobs with an answer in that month. */
  jobs: RateJob[];
  /** The month and those before it, in the order of time. */
  months: FairRate[];
  risk: RiskAnswer | null;
  signals: SignalsAnswer | null;
  attention: Attention;
  departures: Departure[];
  /** Those found. */
  habits: HabitCell[];
  /** Readings left out of all figures. */
  excluded: number;
  /** Time of the newest reading: what `now` means where it says now. */
  newest: number;
  fit: { fittedAt: number; stale: boolean } | null;
  missCost: number;
  printed: { at: number; by: string };
}

/** The months of which a letter can be written, the newest first. @throws Refused */
export async function letterMonths(viewer: Viewer): Promise<string[]> {
  const jobs = await rateJobs(viewer);
  return [...new Set(jobs.map(({ month }) => month))].sort().reverse();
}

/** Null where no job came to an answer in that month, or the answers are not worked out yet. @throws Refused */
export async function letterOf(viewer: Viewer, month: string, now: number): Promise<MonthLetter | null> {
  const { shop, code } = viewer;
  const missCost = missCostOf(shop);
  const newest = (await newestHanging(viewer)) ?? now;
  const [rates, all, risk, signals, attention, figures, habits, excluded] = await Promise.all([
    ratesAnswer(viewer),
    rateJobs(viewer),
    riskAnswer(viewer),
    signalsAnswer(viewer),
    attentionNow(viewer, newest, missCost),
    everybodysFigures(viewer),
    habitsAnswer(viewer),
    countExcluded(viewer),
  ]);
  const jobs = all.filter((job) => job.month === month);
  const months = (rates?.month.groups ?? []).filter(({ name }) => name <= month);
  if (jobs.length === 0 || months.at(-1)?.name !== month) return null;
  return {
    shop,
    month,
    jobs,
    months,
    risk,
    signals,
    attention,
    excluded,
    newest,
    missCost,
    departures: figures === null ? [] : departuresFrom(figures.figures),
    habits: (habits ?? []).filter(({ state }) => state === 'found'),
    fit: figures,
    printed: { at: now, by: code },
  };
}
