import type { Learned } from '../cause/learned';
import { settingOf, technicianBias, technicianRates } from '../figures';
import { habitMatrix, judgeAll, TESTS, type HabitCell, type MatrixWork } from '../habits';
import type { MeasuredSums } from '../measured';
import { riskOf, type ShopRisk } from '../measuring-risk';
import { bandsOf, byPlace, byQuarter, handShares, practiseNext, toAThird, type PlaceKind } from '../my-hand';
import {
  fairRates,
  hardnessModel,
  RATE_GROUPINGS,
  type FairRates,
  type HardnessModel,
  type RateGrouping,
  type RateJob,
} from '../rates';
import { attention, ONE_SERIES, type RateSeries, type Series, type SignalChart } from '../signals';
import type { TechnicianRate } from '../types';
import { usualScenarios, whatIf, withoutGauge, workingShop } from '../what-if';
import type { AtWork } from './at-work';
import type { MissetCount } from './misset-counts';
import {
  chartPiece,
  missetsPiece,
  pieceQuestion,
  type HandPiece,
  type HandsIndex,
  type PieceIndex,
} from './questions';
import { Remembered } from './remembered';
import { readingsAsARule, repeatsOf } from './repeat-sums';
import type { Standing } from './standing';
import type { Answers, SignalsAnswer, WhatIfAnswer } from './types';

/** Answers that take long and whose inputs change seldom: most new readings are of rounds before a repair. */
export type SeldomChanged = 'rates' | 'risk' | 'what-if';
/** Whether an answer that was made from the very same is kept already. */
export type IsKept = (question: SeldomChanged, madeFrom: unknown) => boolean;

/** What measuring error does to the rate is told of so many of the newest jobs. */
const RISK_JOBS = 1_000;
/** The jobs that a list of doubtful ones shows. */
const DOUBTFUL_JOBS = 40;
/** So many gauges are taken out of service, one at a time: each takes a moment to work out. */
const MOST_GAUGES = 12;
/** Common practice where the sheet states none, mm. */
const USUAL_TOLERANCE = 3;

/** Every series with its chart, and what stands out. */
interface Charted {
  charts: readonly SignalChart[];
  signals: SignalsAnswer;
  index: PieceIndex;
}

/** Documents by the question under which each is kept. */
export type Documents = Map<string, unknown>;

/**
 * Answers the shop's questions by one fit from where the shop stands. What is asked again from the same is remembered:
 * after one new reading most of it is.
 */
export class ShopQuestions {
  readonly #learned: Learned;
  readonly #atWork: AtWork;
  readonly #remembered = new Remembered();

  constructor(learned: Learned, atWork: AtWork) {
    this.#learned = learned;
    this.#atWork = atWork;
  }

  /** The answers in the pieces in which they are kept, without those that are kept already. */
  answers(standing: Standing, isKept: IsKept = () => false): { documents: Documents; kept: SeldomChanged[] } {
    const documents: Documents = new Map();
    const kept: SeldomChanged[] = [];
    const seldom = (question: SeldomChanged, from: unknown, work: () => unknown): void => {
      if (isKept(question, from)) kept.push(question);
      else documents.set(question, this.#remembered.of(question, [from], work));
    };
    const rates = standing.rates();
    seldom('rates', rates, () => this.#rates(rates));
    seldom('risk', standing.risks(), () => this.#risk(standing));
    seldom('what-if', this.#atWork, () => this.#whatIf());
    this.#rateJobs(documents, standing);
    this.#signals(documents, standing);
    this.#hands(documents, standing);
    documents.set('habits', this.#habits(standing));
    documents.set('choices', this.#remembered.same('choices', standing.choices()));
    return { documents, kept };
  }

  /**
   * The same work in parts that are remembered, each of some ten milliseconds at most: whoever must not be held up does
   * something else between, and is answered at once after all of them.
   */
  parts(standing: Standing, isKept: IsKept): (() => unknown)[] {
    const rates = standing.rates();
    return [
      ...(isKept('rates', rates)
        ? []
        : [() => this.#hardness(rates), ...RATE_GROUPINGS.map((by) => () => this.#fair(rates, by))]),
      () => this.technicianRates(standing),
      () => this.#habits(standing),
      ...Object.keys(this.#learned.technicians).map(
        (technician) => () => this.#hand(technician, standing, standing.measured()),
      ),
      () => this.#charted(standing),
    ];
  }

  #rates(jobs: readonly RateJob[]): Answers['rates'] {
    return Object.fromEntries(RATE_GROUPINGS.map((by) => [by, this.#fair(jobs, by)])) as Answers['rates'];
  }

  #fair(jobs: readonly RateJob[], by: RateGrouping): FairRates {
    return this.#remembered.of(`rates by ${by}`, [jobs], () => fairRates(jobs, by, this.#hardness(jobs)));
  }

  #hardness(jobs: readonly RateJob[]): HardnessModel {
    return this.#remembered.of('hardness', [jobs], () => hardnessModel(jobs));
  }

  /** The rates of technicians as their figures have them. */
  technicianRates(standing: Standing): Map<string, TechnicianRate> {
    const measured = standing.measured();
    const hands = measured.hands().map(({ technician }) => technician);
    return this.#remembered.of('rates of technicians', [standing.rates(), hands.join('\n')], () =>
      technicianRates(measured),
    );
  }

  #habits(standing: Standing): HabitCell[] {
    const tallies = standing.tallies();
    const technicians = [...tallies.keys()].join('\n');
    return this.#remembered.of('habits', [technicians, ...tallies.values()], () =>
      habitMatrix(tallies, {
        judge: this.#judged,
        shown: (technician, what) => standing.shown(technician, what),
      }),
    );
  }

  /** A reading changes a few parts of a tally: habits of which no hand's part changed are judged as before. */
  readonly #judged: MatrixWork['judge'] = (habit, all) => {
    const parts = [...all].map(([technician, tally]) =>
      this.#remembered.of(`${habit} of ${technician}`, [tally], () =>
        JSON.stringify([technician, TESTS[habit].partOf(tally)]),
      ),
    );
    return this.#remembered.from(`judged ${habit}`, parts, () => judgeAll(habit, all));
  };

  #risk(standing: Standing): ShopRisk {
    const whole = riskOf(standing.risks().slice(-RISK_JOBS), this.#atWork.bodies);
    return { ...whole, jobs: mostDoubtful(whole) };
  }

  #rateJobs(documents: Documents, standing: Standing): void {
    const years = this.#remembered.of('rate-jobs by year', [standing.rates()], () => standing.ratesByYear());
    const list = this.#remembered.of('rate-jobs anew', [years], () =>
      years.map(([year, jobs]) => [year, this.#remembered.same(`rate-jobs ${year}`, jobs)] as const),
    );
    for (const [year, jobs] of list) documents.set(pieceQuestion('rate-jobs', year), jobs);
    documents.set('rate-jobs', this.#remembered.same('rate-jobs', { pieces: years.map(([year]) => year) }));
  }

  #signals(documents: Documents, standing: Standing): void {
    const { charts, signals, index } = this.#charted(standing);
    documents.set('signals', signals);
    for (const chart of charts) documents.set(pieceQuestion('signal-charts', chartPiece(chart)), chart);
    documents.set('signal-charts', index);
  }

  #charted(standing: Standing): Charted {
    const rates = standing.rates();
    const settings = standing.series();
    return this.#remembered.of('charted', [rates, settings], () => this.#chart(rates, settings));
  }

  #chart(rates: readonly RateJob[], settings: readonly Series[]): Charted {
    const series = [...this.#remembered.of('series of rates', [rates], () => rateSeries(rates)), ...settings];
    // A series that is the same as before has the same chart, as long as the limits are the same.
    const of = <Made>(what: string, one: Series, limits: unknown, work: () => Made): Made =>
      this.#remembered.of(`${what} ${chartPiece({ series: one })}`, [one, JSON.stringify(limits)], work);
    const { charts, ...signals } = attention(
      series,
      {},
      {
        chart: (one, limits) => of('chart', one, limits, () => ONE_SERIES.chart(one, limits)),
        change: (one, side) => of('change', one, side, () => ONE_SERIES.change(one, side)),
        tails: (one) => of('tails', one, null, () => ONE_SERIES.tails(one)),
      },
    );
    return {
      charts,
      signals: this.#remembered.same('signals', signals),
      index: this.#remembered.same('signal-charts', { pieces: charts.map(chartPiece) }),
    };
  }

  #hands(documents: Documents, standing: Standing): void {
    const measured = standing.measured();
    const technicians = Object.keys(this.#learned.technicians).sort();
    for (const technician of technicians)
      documents.set(pieceQuestion('hands', technician), this.#hand(technician, standing, measured));
    const bands = standing
      .shopQuarters()
      .flatMap((one) => this.#remembered.from(`band ${one.quarter}`, one, () => bandsOf([one])));
    const index: HandsIndex = { pieces: technicians, bands };
    documents.set('hands', this.#remembered.same('hands', index));
    const missets = technicians.flatMap((technician) => this.#missets(technician, standing));
    for (const [piece, counts] of missets) documents.set(pieceQuestion('missets', piece), counts);
    const pieces = missets.map(([piece]) => piece);
    documents.set('missets', this.#remembered.same('missets', { pieces } satisfies PieceIndex));
  }

  /** Of one technician by year. */
  #missets(technician: string, standing: Standing): [piece: string, counts: readonly MissetCount[]][] {
    const years = standing.missets(technician);
    return this.#remembered.of(`missets ${technician}`, [years], () =>
      years.map(([year, counts]) => {
        const piece = missetsPiece(technician, year);
        return [piece, this.#remembered.same(`missets ${piece}`, counts)];
      }),
    );
  }

  /** Without the shop's band and likely mis-sets. */
  #hand(technician: string, standing: Standing, measured: MeasuredSums): HandPiece {
    const cells = standing.cells(technician);
    const quarters = standing.quarters(technician);
    const from = [JSON.stringify(measured.hand(technician) ?? null), cells, quarters];
    return this.#remembered.of(`hand ${technician}`, from, () => {
      const hand = {
        repeatability: repeatsOf(measured, technician),
        setting: settingOf(this.#learned, technician),
        bias: technicianBias(this.#learned, technician),
      };
      const places = {
        'section and side': byPlace(cells, 'section and side'),
        'distance from the zero span': byPlace(cells, 'distance from the zero span'),
        gauge: byPlace(cells, 'gauge'),
      } satisfies Record<PlaceKind, unknown>;
      return {
        technician,
        tolerance: USUAL_TOLERANCE,
        shares: handShares(hand, USUAL_TOLERANCE),
        toAThird: toAThird(hand, USUAL_TOLERANCE, readingsAsARule(measured, technician)),
        places,
        quarters: quarters.flatMap((one) =>
          this.#remembered.from(`quarter ${one.quarter} of ${technician}`, one, () => byQuarter([one], [])),
        ),
        practice: practiseNext(hand, Object.values(places).flat(), USUAL_TOLERANCE),
      };
    });
  }

  #whatIf(): WhatIfAnswer {
    const { usage, rests, bodies } = this.#atWork;
    const none = { without: [], farthest: null, gauges: 0, rests };
    if (usage === null)
      return {
        ...none,
        answer: null,
        why: 'There is no measuring after a repair with a datum to start from yet.',
      };
    const shop = workingShop(this.#learned, bodies, usage);
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
  const whole: Counted = { subject: { kind: 'shop', name: null }, months: new Map() };
  const technicians = new Map<string, Counted>();
  const sheets = new Map<string, Counted>();
  const named = (of: Map<string, Counted>, kind: 'technician' | 'sheet', name: string): Counted => {
    const known = of.get(name) ?? { subject: { kind, name }, months: new Map() };
    of.set(name, known);
    return known;
  };
  for (const job of jobs) {
    count(whole, job);
    count(named(technicians, 'technician', job.technician), job);
    if (job.sheet !== null) count(named(sheets, 'sheet', job.sheet), job);
  }
  const counted = [...(jobs.length === 0 ? [] : [whole]), ...inOrder(technicians), ...inOrder(sheets)];
  return counted.map((own) => ({
    what: 'right-first-time',
    subject: own.subject,
    periods: months.map((period) => ({ period, ...(own.months.get(period) ?? { right: 0, jobs: 0 }) })),
  }));
}

interface Counted {
  subject: RateSeries['subject'];
  months: Map<string, { right: number; jobs: number }>;
}

function count({ months }: Counted, { month, right }: RateJob): void {
  const known = months.get(month) ?? { right: 0, jobs: 0 };
  months.set(month, { right: known.right + Number(right), jobs: known.jobs + 1 });
}

const inOrder = (of: Map<string, Counted>): Counted[] =>
  [...of].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, counted]) => counted);
