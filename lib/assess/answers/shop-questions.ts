import type { Learned } from '../cause/learned';
import { settingOf, technicianBias } from '../figures';
import { habitMatrix } from '../habits';
import { MeasuredSums } from '../measured';
import { shopRisk, type FinalJob, type ShopRisk } from '../measuring-risk';
import { byPlace, byQuarter, handShares, practiseNext, toAThird, type PlaceKind } from '../my-hand';
import { fairRates, RATE_GROUPINGS, type RateJob } from '../rates';
import { attention, type RateSeries, type Series } from '../signals';
import { usualScenarios, whatIf, withoutGauge, workingShop } from '../what-if';
import type { JobShare } from './job-share';
import { MissetCounts } from './misset-counts';
import { MonthSums, type MonthDocuments, type MonthKind } from './month-sums';
import { OrdinaryJob } from './ordinary-job';
import { readingsAsARule, repeatsOf } from './repeat-sums';
import { SettingSums } from './setting-sums';
import { TallySum } from './tally-sum';
import type { Answers, HandAnswer, WhatIfAnswer } from './types';

/** Answers that take a second and whose inputs change seldom: most new readings are of rounds before a repair. */
export type SeldomChanged = 'rates' | 'risk' | 'what-if';
export type KnownAnswers = <Asked extends SeldomChanged>(
  question: Asked,
  madeFrom: unknown,
  work: () => Answers[Asked],
) => Answers[Asked];

/** What measuring error does to the rate is worked out of so many of the newest jobs: it takes a moment for each. */
const RISK_JOBS = 1_000;
/** The jobs that a list of doubtful ones shows. */
const DOUBTFUL_JOBS = 40;
/** So many gauges are taken out of service, one at a time: each takes a moment to work out. */
const MOST_GAUGES = 12;
/** Common practice where the sheet states none, mm. */
const USUAL_TOLERANCE = 3;

/**
 * Answers the shop's questions from what each of its jobs adds to them, taken one after another in the order of time.
 * What is held of a job is small, so a long history fits into memory.
 */
export class ShopQuestions {
  readonly #learned: Learned;
  readonly #rateJobs: RateJob[] = [];
  #finalJobs: FinalJob[] = [];
  readonly #tallies = new Map<string, TallySum>();
  readonly #settings: SettingSums;
  readonly #measured = new MeasuredSums();
  readonly #ordinary = new OrdinaryJob();
  readonly #months: MonthSums;
  readonly #missets = new MissetCounts();

  /** @param months the questions of months that are answered; all where it is null. */
  constructor(learned: Learned, timeZone: string, months: ReadonlySet<string> | null = null) {
    this.#learned = learned;
    this.#settings = new SettingSums(timeZone);
    this.#months = new MonthSums(timeZone, months);
  }

  add(share: JobShare): void {
    const { rate, final, tallies, rounds, measured, missets, ordinary } = share;
    if (rate !== null) this.#rateJobs.push(rate);
    if (final !== null) this.#finalJobs.push(final);
    if (this.#finalJobs.length > 2 * RISK_JOBS) this.#finalJobs = this.#finalJobs.slice(-RISK_JOBS);
    for (const [technician, tally] of tallies) {
      const sum = this.#tallies.get(technician) ?? new TallySum();
      this.#tallies.set(technician, sum);
      sum.add(tally);
    }
    for (const { errors } of rounds) this.#settings.addRound(errors);
    this.#months.add(share);
    this.#measured.add(measured);
    this.#missets.add(missets);
    this.#ordinary.add(ordinary);
  }

  /** What was measured, by whom and with what. */
  measured(): MeasuredSums {
    return this.#measured;
  }

  /** @param known gives an answer that was made from the very same before, where it has one. */
  answers(known: KnownAnswers = (_, __, work) => work()): Answers {
    const technicians = Object.keys(this.#learned.technicians).sort();
    const tallies = new Map(
      [...this.#tallies]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([technician, sum]) => [technician, sum.told()]),
    );
    const jobs = this.#finalJobs.slice(-RISK_JOBS);
    const risk = known('risk', jobs, () => {
      const whole = shopRisk(jobs);
      return { ...whole, jobs: mostDoubtful(whole) };
    });
    const { charts, ...signals } = attention([...rateSeries(this.#rateJobs), ...this.#settings.series()]);
    return {
      rates: known(
        'rates',
        this.#rateJobs,
        () =>
          Object.fromEntries(
            RATE_GROUPINGS.map((by) => [by, fairRates(this.#rateJobs, by)]),
          ) as Answers['rates'],
      ),
      'rate-jobs': this.#rateJobs,
      risk,
      signals,
      'signal-charts': charts,
      'what-if': known('what-if', [risk.prior, this.#ordinary.usage(), this.#ordinary.rests()], () =>
        this.#whatIf(risk),
      ),
      hands: technicians.map((technician) => this.#hand(technician)),
      habits: habitMatrix(tallies),
      choices: this.#months.choices(),
    };
  }

  /** What the answers within some months are made from, by `monthQuestion`. */
  months(): [question: string, document: MonthDocuments[MonthKind]][] {
    return this.#months.documents();
  }

  #hand(technician: string): HandAnswer {
    const hand = {
      repeatability: repeatsOf(this.#measured, technician),
      setting: settingOf(this.#learned, technician),
      bias: technicianBias(this.#learned, technician),
    };
    const cells = this.#settings.cells(technician);
    const places = {
      'section and side': byPlace(cells, 'section and side'),
      'distance from the zero span': byPlace(cells, 'distance from the zero span'),
      gauge: byPlace(cells, 'gauge'),
    } satisfies Record<PlaceKind, unknown>;
    return {
      technician,
      tolerance: USUAL_TOLERANCE,
      shares: handShares(hand, USUAL_TOLERANCE),
      toAThird: toAThird(hand, USUAL_TOLERANCE, readingsAsARule(this.#measured, technician)),
      places,
      quarters: byQuarter(this.#settings.quarters(technician), this.#settings.shopQuarters()),
      missets: this.#missets.of(technician),
      practice: practiseNext(hand, Object.values(places).flat(), USUAL_TOLERANCE),
    };
  }

  #whatIf({ prior }: ShopRisk): WhatIfAnswer {
    const usage = this.#ordinary.usage();
    const rests = this.#ordinary.rests();
    const none = { without: [], farthest: null, gauges: 0, rests };
    if (usage === null)
      return {
        ...none,
        answer: null,
        why: 'There is no measuring after a repair with a datum to start from yet.',
      };
    const shop = workingShop(this.#learned, prior, usage);
    const usual = usualScenarios(shop);
    const outward = [...shop.gauges].sort((a, b) => Math.abs(b.bias) - Math.abs(a.bias));
    const taken = outward.slice(0, MOST_GAUGES).map(({ gauge }) => gauge);
    const { rows, ...answer } = whatIf(shop, [
      ...usual,
      ...(outward.length < 2 ? [] : taken.map((gauge) => withoutGauge(shop, gauge))),
    ]);
    return {
      answer: { ...answer, rows: rows.slice(0, usual.length) },
      why: null,
      without: rows
        .slice(usual.length)
        .flatMap((row, i) => {
          const gauge = taken[i];
          return gauge === undefined ? [] : [{ gauge, row }];
        })
        .sort((a, b) => a.gauge.localeCompare(b.gauge, 'en', { numeric: true })),
      farthest: outward.length < 2 ? null : (taken[0] ?? null),
      gauges: outward.length,
      rests,
    };
  }
}

/** The jobs of which it is least clear whether they were called rightly, in the order of their numbers. */
function mostDoubtful({ jobs }: ShopRisk): ShopRisk['jobs'] {
  const doubt = ({ calledRight, trulyRight }: ShopRisk['jobs'][number]) =>
    calledRight ? 1 - trulyRight : trulyRight;
  return [...jobs]
    .sort((a, b) => doubt(b) - doubt(a))
    .slice(0, DOUBTFUL_JOBS)
    .sort((a, b) => a.job.localeCompare(b.job, 'en', { numeric: true }))
    .map((job) => ({ ...job, dimensions: [] }));
}

/** Right first time by month: the shop, its technicians and its sheets. */
function rateSeries(jobs: readonly RateJob[]): Series[] {
  const months = [...new Set(jobs.map(({ month }) => month))].sort();
  const subjects = new Map<string, RateSeries['subject']>();
  const counts = new Map<string, Map<string, { right: number; jobs: number }>>();
  const count = (subject: RateSeries['subject'], { month, right }: RateJob) => {
    const key = JSON.stringify([subject.kind, subject.name]);
    subjects.set(key, subject);
    const own = counts.get(key) ?? new Map<string, { right: number; jobs: number }>();
    const known = own.get(month) ?? { right: 0, jobs: 0 };
    counts.set(key, own.set(month, { right: known.right + Number(right), jobs: known.jobs + 1 }));
  };
  for (const job of jobs) {
    count({ kind: 'shop', name: null }, job);
    count({ kind: 'technician', name: job.technician }, job);
    if (job.sheet !== null) count({ kind: 'sheet', name: job.sheet }, job);
  }
  return [...counts].map(([key, own]) => ({
    what: 'right-first-time',
    subject: subjects.get(key) ?? { kind: 'shop', name: null },
    periods: months.map((period) => ({ period, ...(own.get(period) ?? { right: 0, jobs: 0 }) })),
  }));
}
