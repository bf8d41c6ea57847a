import type { Job } from '@/lib/measure';
import { grouped } from '@/lib/measure/grouped';
import { monthOf } from '@/lib/measure/month-of';
import { mergeCollapsed } from '@/lib/stats';
import { addTallies, type HabitTally } from '../habits';
import type { HandCell } from '../my-hand';
import type { SettingError } from './setting-errors';

/** What of a technician adds up over the rounds of a month, so that any stretch of time can be asked of it. */
export interface HandMonth {
  technician: string;
  cells: HandCell[];
  /** Repeats with the gauge untouched, of all that was read, lengths too. */
  repeats: Repeats[];
  /** The mean setting error of each round, collapsed: by gauge and section, and over all of them (null). */
  rounds: RoundMeans[];
}

export interface Repeats {
  gauge: string;
  section: HandCell['section'] | null;
  df: number;
  ss: number;
}

export interface RoundMeans {
  gauge: string | null;
  section: HandCell['section'] | null;
  n: number;
  mean: number;
  ss: number;
}

/** The habits' sums of a month by technician. */
export type HabitMonth = [technician: string, tally: HabitTally][];

/** What can be asked for: the months and the sheets that have sums, in their order. */
export interface SpanChoices {
  months: string[];
  sheets: string[];
}

export interface MonthDocuments {
  habits: HabitMonth;
  hands: HandMonth[];
}

export type MonthKind = keyof MonthDocuments;

/** Under which question the sums of a month are kept; of one sheet, or of all of them together. */
export const monthQuestion = (kind: MonthKind, month: string, sheet?: string): string =>
  JSON.stringify([kind, month, ...(sheet === undefined ? [] : [sheet])]);

/** Sums by month and technician, over all sheets and by sheet: their number follows the months, not the readings. */
export class MonthSums {
  readonly #timeZone: string;
  readonly #habits = new Map<string, Map<string, HabitTally[]>>();
  readonly #hands = new Map<string, Map<string, HandSums>>();
  readonly #months = new Set<string>();
  readonly #sheets = new Set<string>();

  constructor(timeZone: string) {
    this.#timeZone = timeZone;
  }

  /**
   * @param tallies of the job, by technician. They count in the month in which the job was begun; what is summed of
   * settings and repeats counts in the month of its round.
   * @param errors round by round, in the order of the job's rounds.
   */
  add(job: Job, tallies: ReadonlyMap<string, HabitTally>, errors: readonly SettingError[][]): void {
    const begun = job.rounds[0]?.setups[0]?.takenAt;
    if (begun === undefined) return;
    const sheet = job.sheet ?? undefined;
    if (sheet !== undefined) this.#sheets.add(sheet);
    for (const question of questionsOf('habits', this.#month(begun), sheet)) {
      const month = within(this.#habits, question, () => new Map<string, HabitTally[]>());
      for (const [technician, tally] of tallies)
        addTally(
          within(month, technician, () => []),
          tally,
        );
    }
    job.rounds.forEach((round, i) => {
      const at = round.setups[0]?.takenAt;
      if (at === undefined) return;
      for (const question of questionsOf('hands', this.#month(at), sheet)) {
        const month = within(this.#hands, question, () => new Map<string, HandSums>());
        for (const [technician, setups] of grouped(round.setups, (setup) => setup.technician))
          within(month, technician, () => new HandSums()).addSetups(setups);
        for (const [technician, own] of grouped(errors[i] ?? [], (error) => error.technician))
          within(month, technician, () => new HandSums()).addErrors(own);
      }
    });
  }

  choices(): SpanChoices {
    return { months: [...this.#months].sort(), sheets: [...this.#sheets].sort() };
  }

  /** The sums, by the question under which they are kept. */
  documents(): [question: string, document: MonthDocuments[MonthKind]][] {
    return [
      ...[...this.#habits].map(([question, month]): [string, HabitMonth] => [
        question,
        [...month].map(([technician, tallies]) => [technician, addTallies(tallies)]),
      ]),
      ...[...this.#hands].map(([question, month]): [string, HandMonth[]] => [
        question,
        [...month].map(([technician, sums]) => sums.told(technician)),
      ]),
    ];
  }

  #month(at: number): string {
    const month = monthOf(at, this.#timeZone);
    this.#months.add(month);
    return month;
  }
}

const questionsOf = (kind: MonthKind, month: string, sheet: string | undefined): string[] => [
  monthQuestion(kind, month),
  ...(sheet === undefined ? [] : [monthQuestion(kind, month, sheet)]),
];

/** So many tallies wait before they are summed: summing each at once would copy the sum every time. */
const WAITING = 16;

function addTally(tallies: HabitTally[], tally: HabitTally): void {
  tallies.push(tally);
  if (tallies.length >= WAITING) tallies.splice(0, tallies.length, addTallies(tallies));
}

const NONE = { n: 0, mean: 0, ss: 0 };

/** One technician in one month. */
class HandSums {
  readonly #cells = new Map<string, HandCell>();
  readonly #repeats = new Map<string, Repeats>();
  readonly #rounds = new Map<string, RoundMeans>();

  addSetups(setups: Job['rounds'][number]['setups']): void {
    for (const { gauge, observations } of setups)
      for (const { section, n, ss } of observations) {
        if (n < 2) continue;
        const key = JSON.stringify([gauge, section]);
        const sum = within(this.#repeats, key, () => ({ gauge, section, df: 0, ss: 0 }));
        sum.df += n - 1;
        sum.ss += ss;
      }
  }

  /** @param errors of one round. */
  addErrors(errors: readonly SettingError[]): void {
    for (const error of errors) {
      const { section, side, gauge, readingDf, readingSs } = error;
      // To half a metre, as for the whole history.
      const distance = Math.ceil(error.distance / 500) * 500;
      const key = JSON.stringify([section, side, gauge, distance]);
      const known = this.#cells.get(key) ?? {
        ...{ section, side, gauge, distance, readingDf: 0, readingSs: 0 },
        ...NONE,
      };
      this.#cells.set(key, {
        ...known,
        ...mergeCollapsed(known, { n: 1, mean: error.error, ss: 0 }),
        readingDf: known.readingDf + readingDf,
        readingSs: known.readingSs + readingSs,
      });
    }
    for (const of of [
      () => [null, null] as const,
      ({ gauge }: SettingError) => [gauge, null] as const,
      ({ section }: SettingError) => [null, section] as const,
      ({ gauge, section }: SettingError) => [gauge, section] as const,
    ])
      for (const [key, own] of grouped(errors, (error) => JSON.stringify(of(error)))) {
        const [gauge, section] = JSON.parse(key) as [string | null, HandCell['section'] | null];
        const mean = own.reduce((sum, { error }) => sum + error, 0) / own.length;
        const known = this.#rounds.get(key) ?? { gauge, section, ...NONE };
        this.#rounds.set(key, { ...known, ...mergeCollapsed(known, { n: 1, mean, ss: 0 }) });
      }
  }

  told(technician: string): HandMonth {
    return {
      technician,
      cells: [...this.#cells.values()],
      repeats: [...this.#repeats.values()],
      rounds: [...this.#rounds.values()],
    };
  }
}

function within<Key, Value>(map: Map<Key, Value>, key: Key, fresh: () => Value): Value {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = fresh();
  map.set(key, made);
  return made;
}
