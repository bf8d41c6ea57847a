import { isDeepStrictEqual } from 'node:util';
import { grouped } from '@/lib/measure/grouped';
import { quarterOf, yearOf as calendarYearOf } from '@/lib/measure/month-of';
import { mergeCollapsed } from '@/lib/stats';
import { addCountsOf, addTallies, newestOf, type HabitTally, type Shown } from '../habits';
import { MeasuredSums } from '../measured';
import type { JobRisk } from '../measuring-risk';
import type { HandCell, Quarter, ShopQuarter } from '../my-hand';
import type { RateJob } from '../rates';
import type { SettingSeries } from '../signals';
import { addedCounts, type MissetCount } from './misset-counts';
import type { HabitMonth, HandMonth, SpanChoices } from './month-sums';
import { within } from './within';
import type { WorkMonth } from './work-month';

/** All that is summed of one month over all sheets. */
export interface MonthOfShop {
  /** `2025-03`. */
  month: string;
  /** Of a month that is taken anew in part, those of the technicians whose sums changed. */
  habits: HabitMonth;
  hands: HandMonth[];
  /** Everybody who has sums of hands, in the order in which they come in the month. */
  hanging: readonly string[];
  /** Null where it is not among the months that changed. */
  work: WorkMonth | null;
}

/** What of a year is not as it was before, where that is known. */
export interface YearChange {
  /** Whose sums of habits and settings are others. */
  technicians: ReadonlySet<string>;
  /** Months in which anything is another. */
  months: ReadonlySet<string>;
}

/** Of values mm: how many, their mean and their squares; and of repeats with the gauge untouched. */
interface Sum {
  n: number;
  mean: number;
  ss: number;
  readingDf: number;
  readingSs: number;
}

const NONE: Sum = { n: 0, mean: 0, ss: 0, readingDf: 0, readingSs: 0 };

/** One year: what adds up over its months, and by month what does not. */
interface Year {
  tallies: Map<string, HabitTally>;
  /** By technician, then by place. */
  cells: Map<string, Map<string, HandCell>>;
  measured: MeasuredSums;
  months: Month[];
  /** No quarter reaches into another year. */
  quarters: ShopQuarter[];
  /** Setting errors by month, in the order of `keyOf`. */
  series: SettingSeries[];
  /** By technician, then by year: a job that was begun in this one may have been measured in the next. */
  missets: Map<string, [year: string, counts: MissetCount[]][]>;
}

type Month = Omit<WorkMonth, 'jobs'> & {
  month: string;
  /** Of each technician: the means of the rounds, and all settings. */
  bias: { technician: string; n: number; mean: number; ss: number }[];
  settings: Map<string, Sum>;
};

/**
 * Where the shop stands, from the sums of its months: months are added up to years and years to the whole, always in
 * this order, so that the same readings give the same figures to the last digit whatever changed when, and a change in
 * one month costs the months of its year.
 */
export class Standing {
  readonly #years = new Map<string, Year>();
  /** What was added up for one technician, until something of theirs changes. */
  readonly #ofHands = new Map<string, Map<string, unknown>>();
  #series: SettingSeries[] = [];
  /** Whether they are those of the years that stand here now. */
  #seriesStand = false;
  #rates: RateJob[] | null = null;
  #risks: JobRisk[] | null = null;
  #measured: MeasuredSums | null = null;

  /** The months of a year that have anything; null where nothing is known of the year. */
  monthsOf(year: string): string[] | null {
    return this.#years.get(year)?.months.map(({ month }) => month) ?? null;
  }

  /**
   * Takes a year anew.
   * @param months of this year that have anything, in their order
   * @param change what of it changed, where it is known that nothing else did
   */
  setYear(year: string, months: readonly MonthOfShop[], change?: YearChange): void {
    const before = this.#years.get(year);
    const known = before === undefined || change === undefined ? null : { before, change };
    const after = months.length === 0 ? undefined : yearOf(months, known);
    if (after === undefined) this.#years.delete(year);
    else this.#years.set(year, after);
    this.#measured = null;
    this.#seriesStand = false;
    if (change === undefined) this.#ofHands.clear();
    for (const technician of change?.technicians ?? []) this.#ofHands.delete(technician);
    // What is the same stays the same object: what was worked out of it holds.
    if (!alike(before, after, ({ rates }) => rates)) this.#rates = null;
    if (!alike(before, after, ({ risks }) => risks)) this.#risks = null;
  }

  /** Jobs with a first measuring after the repair, by year, in the order of time. */
  ratesByYear(): [year: string, rates: RateJob[]][] {
    return this.#inOrder().map(([year, { months }]) => [year, months.flatMap(({ rates }) => rates)]);
  }

  rates(): readonly RateJob[] {
    return (this.#rates ??= this.#months().flatMap(({ rates }) => rates));
  }

  /** Of the same jobs. */
  risks(): readonly JobRisk[] {
    return (this.#risks ??= this.#months().flatMap(({ risks }) => risks));
  }

  /** Without the setups that show something: see `shown`. */
  tallies(): Map<string, HabitTally> {
    const years = this.#inOrder().map(([, { tallies }]) => tallies);
    const technicians = [...new Set(years.flatMap((tallies) => [...tallies.keys()]))].sort();
    return new Map(
      technicians.map((technician) => [
        technician,
        this.#once(technician, 'tally', () =>
          addCountsOf(years.flatMap((tallies) => tallies.get(technician) ?? [])),
        ),
      ]),
    );
  }

  /** The newest setups of one technician that show something, as the `shown` of a tally of everything has them. */
  shown(technician: string, what: string): Shown[] {
    return this.#once(technician, `shown ${what}`, () =>
      newestOf(this.#inOrder().flatMap(([, { tallies }]) => [tallies.get(technician)?.shown[what] ?? []])),
    );
  }

  /** What was measured, by whom and with what: to be read. */
  measured(): MeasuredSums {
    if (this.#measured !== null) return this.#measured;
    const sums = new MeasuredSums();
    for (const [, { measured }] of this.#inOrder())
      sums.addSums({ hands: measured.hands(), gauges: measured.gauges(), outcomes: measured.outcomes });
    this.#measured = sums;
    return sums;
  }

  /** In the order of places. */
  cells(technician: string): HandCell[] {
    return this.#once(technician, 'cells', () => {
      const whole = new Map<string, HandCell>();
      for (const [, { cells }] of this.#inOrder())
        for (const cell of cells.get(technician)?.values() ?? []) addCell(whole, cell);
      return [...whole].sort(byKey).map(([, cell]) => cell);
    });
  }

  quarters(technician: string): Quarter[] {
    return this.#once(technician, 'quarters', () => {
      const quarters = new Map<string, Sum>();
      for (const { month, settings } of this.#months()) {
        const sum = settings.get(technician);
        const quarter = quarterOf(month);
        if (sum !== undefined) quarters.set(quarter, added(quarters.get(quarter) ?? NONE, sum));
      }
      return [...quarters].map(quarterSums);
    });
  }

  /** The shop by quarter, with how many technicians stand behind each. */
  shopQuarters(): ShopQuarter[] {
    return this.#inOrder().flatMap(([, { quarters }]) => quarters);
  }

  /** By year; of a year that is the same, the same list. */
  missets(technician: string): [year: string, counts: readonly MissetCount[]][] {
    return this.#once(technician, 'missets', () => {
      const years = this.#inOrder().flatMap(([, { missets }]) => missets.get(technician) ?? []);
      return [...grouped(years, ([year]) => year)].sort(byKey).map(([year, own]) => {
        const parts = own.map(([, counts]) => counts);
        return [year, parts.length === 1 ? (parts[0] ?? []) : addedCounts(parts.flat())];
      });
    });
  }

  /** Setting errors by month: each gauge's bias, each technician's bias and scatter; a series that is the same, the same object. */
  series(): readonly SettingSeries[] {
    if (this.#seriesStand) return this.#series;
    const all = new Map<string, SettingSeries>();
    for (const [, year] of this.#inOrder())
      for (const { periods, ...one } of year.series)
        within(all, keyOf(one), () => ({ ...one, periods: [] })).periods.push(...periods);
    const before = new Map(this.#series.map((one) => [keyOf(one), one]));
    this.#series = [...all].sort(byKey).map(([key, one]) => {
      const known = before.get(key);
      return known !== undefined && samePeriods(known, one) ? known : one;
    });
    this.#seriesStand = true;
    return this.#series;
  }

  choices(): SpanChoices {
    const months = this.#months();
    return {
      months: months.map(({ month }) => month),
      sheets: [...new Set(months.flatMap(({ sheets }) => sheets))].sort(),
    };
  }

  #once<Made>(technician: string, what: string, make: () => Made): Made {
    const own = within(this.#ofHands, technician, () => new Map<string, unknown>());
    return within(own, what, make) as Made;
  }

  #months(): Month[] {
    return this.#inOrder().flatMap(([, { months }]) => months);
  }

  #inOrder(): [string, Year][] {
    return [...this.#years].sort(byKey);
  }
}

const keyOf = ({ what, subject }: Omit<SettingSeries, 'periods'>): string =>
  `${what} ${subject.kind} ${subject.name ?? ''}`;

function samePeriods(a: SettingSeries, b: SettingSeries): boolean {
  return (
    a.periods.length === b.periods.length &&
    a.periods.every((one, i) => {
      const other = b.periods[i];
      // Of a year that stands as it was they are the very same.
      if (one === other) return true;
      return (
        one.period === other?.period && one.n === other.n && one.mean === other.mean && one.ss === other.ss
      );
    })
  );
}

function seriesOf(months: readonly Month[]): SettingSeries[] {
  const all = new Map<string, SettingSeries>();
  const add = (
    { what, subject }: Omit<SettingSeries, 'periods'>,
    period: SettingSeries['periods'][number],
  ): void => {
    within(all, keyOf({ what, subject }), () => ({ what, subject, periods: [] })).periods.push(period);
  };
  for (const { month: period, bias, scatter, gaugeMeans } of months) {
    for (const { gauge: name, n, mean, ss } of gaugeMeans)
      add({ what: 'setting-bias', subject: { kind: 'gauge', name } }, { period, n, mean, ss });
    for (const { technician: name, n, mean, ss } of bias)
      add({ what: 'setting-bias', subject: { kind: 'technician', name } }, { period, n, mean, ss });
    for (const { technician: name, df, ss } of scatter)
      add(
        { what: 'setting-scatter', subject: { kind: 'technician', name } },
        { period, n: df === 0 ? 0 : df + 1, mean: 0, ss },
      );
  }
  return [...all.values()];
}

function missetsOf(months: readonly Month[], technician: string): [year: string, counts: MissetCount[]][] {
  const own = months.flatMap(({ missets }) =>
    missets.flatMap(([whose, counts]) => (whose === technician ? counts : [])),
  );
  return [...grouped(addedCounts(own), ({ month }) => calendarYearOf(month))];
}

/** @param known the same year as it was, and what of it changed */
function yearOf(months: readonly MonthOfShop[], known: { before: Year; change: YearChange } | null): Year {
  const asked = (technician: string): boolean => known?.change.technicians.has(technician) !== false;
  const before = new Map((known?.before.months ?? []).map((month) => [month.month, month]));
  const tallies = new Map<string, HabitTally[]>();
  const cells = new Map<string, Map<string, HandCell>>();
  for (const { habits, hands } of months) {
    for (const [technician, tally] of habits)
      if (asked(technician)) within(tallies, technician, () => []).push(tally);
    for (const hand of hands) {
      if (!asked(hand.technician)) continue;
      const own = within(cells, hand.technician, () => new Map<string, HandCell>());
      for (const cell of hand.cells) addCell(own, cell);
    }
  }
  const now = months.flatMap((month) => {
    const was = before.get(month.month);
    if (month.work === null) return was ?? [];
    return monthOf(month, month.work, was === undefined ? null : { was, asked });
  });
  const measured = new MeasuredSums();
  for (const { hands, gauges, rates } of now) {
    const outcomes = rates.map(({ technician, right, start }) => ({
      technician,
      right,
      outBefore: start.measured ? start.out : null,
    }));
    measured.addSums({ hands, gauges, outcomes });
  }
  const others = <Of>(of: ReadonlyMap<string, Of> | undefined): [string, Of][] =>
    [...(of ?? [])].filter(([technician]) => !asked(technician));
  const counted = new Set(now.flatMap(({ missets }) => missets.map(([technician]) => technician)));
  return {
    tallies: new Map([
      ...others(known?.before.tallies),
      ...[...tallies].map(([technician, own]): [string, HabitTally] => [technician, addTallies(own)]),
    ]),
    cells: new Map([...others(known?.before.cells), ...cells]),
    measured,
    months: now,
    quarters: shopQuartersOf(now),
    series: seriesOf(now),
    missets: new Map([
      ...others(known?.before.missets),
      ...[...counted].filter(asked).map((technician) => [technician, missetsOf(now, technician)] as const),
    ]),
  };
}

function shopQuartersOf(months: readonly Month[]): ShopQuarter[] {
  const quarters = new Map<string, { sum: Sum; technicians: Set<string> }>();
  for (const { month, settings } of months)
    for (const [technician, sum] of settings) {
      const known = within(quarters, quarterOf(month), () => ({ sum: NONE, technicians: new Set<string>() }));
      known.technicians.add(technician);
      known.sum = added(known.sum, sum);
    }
  return [...quarters].map(([quarter, { sum, technicians }]) => ({
    ...quarterSums([quarter, sum]),
    technicians: technicians.size,
  }));
}

/** @param known how the month was, and whose sums changed since */
function monthOf(
  { month, hands, hanging }: MonthOfShop,
  { jobs: _, ...work }: WorkMonth,
  known: { was: Month; asked: (technician: string) => boolean } | null,
): Month {
  const own = new Map(hands.map((hand) => [hand.technician, hand]));
  const asWas = (technician: string): Month | null => (known?.asked(technician) === false ? known.was : null);
  return {
    ...work,
    month,
    bias: hanging.flatMap(
      (technician) =>
        asWas(technician)?.bias.filter((one) => one.technician === technician) ??
        (own.get(technician)?.rounds ?? [])
          .filter(({ gauge, section }) => gauge === null && section === null)
          .map(({ n, mean, ss }) => ({ technician, n, mean, ss })),
    ),
    settings: new Map(
      hanging.flatMap((technician): [string, Sum][] => {
        const was = asWas(technician);
        const cells = own.get(technician)?.cells ?? [];
        const sum = was === null ? cells.reduce(added, NONE) : (was.settings.get(technician) ?? NONE);
        return sum.n === 0 ? [] : [[technician, sum]];
      }),
    ),
  };
}

/** Whatever the order of their fields: of what was read from a server and what was made here it is another. */
function alike(before: Year | undefined, after: Year | undefined, of: (month: Month) => unknown): boolean {
  const [one, other] = [before?.months ?? [], after?.months ?? []];
  if (one.length !== other.length) return isDeepStrictEqual(one.flatMap(of), other.flatMap(of));
  return one.every((month, i) => {
    const same = other[i];
    return same === month || (same !== undefined && isDeepStrictEqual(of(month), of(same)));
  });
}

const added = (a: Sum, b: Sum): Sum => {
  const { n, mean, ss } = mergeCollapsed(a, b);
  return { n, mean, ss, readingDf: a.readingDf + b.readingDf, readingSs: a.readingSs + b.readingSs };
};

function addCell(cells: Map<string, HandCell>, cell: HandCell): void {
  const { section, side, gauge, distance } = cell;
  const key = `${section} ${side} ${distance} ${gauge}`;
  cells.set(key, { section, side, gauge, distance, ...added(cells.get(key) ?? NONE, cell) });
}

const quarterSums = ([quarter, { n, mean, ss, readingDf, readingSs }]: [string, Sum]): Quarter => ({
  quarter,
  reading: { df: readingDf, ss: readingSs },
  setting: { n, mean, ss },
});

const byKey = ([a]: [string, unknown], [b]: [string, unknown]): number => (a < b ? -1 : 1);
