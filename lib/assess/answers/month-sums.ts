import type { Job } from '@/lib/measure';
import { grouped } from '@/lib/measure/grouped';
import { monthOf } from '@/lib/measure/month-of';
import { mergeCollapsed } from '@/lib/stats';
import type { HabitTally } from '../habits';
import type { HandCell } from '../my-hand';
import type { JobShare } from './job-share';
import { pieceQuestion, type PieceIndex } from './questions';
import type { SettingError } from './setting-errors';
import { TallySum } from './tally-sum';
import { within } from './within';
import { WorkSums, type WorkMonth } from './work-month';

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

export interface RoundShare {
  /** Of its first setup, epoch ms. */
  at: number;
  repeats: [technician: string, repeats: Repeats[]][];
  errors: SettingError[];
}

/** @param errors round by round, in the order of the job's rounds. */
export function roundsIn(job: Job, errors: readonly SettingError[][]): RoundShare[] {
  return job.rounds.flatMap(({ setups }, i): RoundShare[] => {
    const [first] = setups;
    if (first === undefined) return [];
    const repeats = [...grouped(setups, ({ technician }) => technician)].map(
      ([technician, own]): [string, Repeats[]] => [technician, repeatsIn(own)],
    );
    return [{ at: first.takenAt, repeats, errors: errors[i] ?? [] }];
  });
}

function repeatsIn(setups: Job['rounds'][number]['setups']): Repeats[] {
  const sums = new Map<string, Repeats>();
  for (const { gauge, observations } of setups)
    for (const { section, n, ss } of observations) {
      if (n < 2) continue;
      const sum = within(sums, JSON.stringify([gauge, section]), () => ({ gauge, section, df: 0, ss: 0 }));
      sum.df += n - 1;
      sum.ss += ss;
    }
  return [...sums.values()];
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
  work: WorkMonth;
}

export type MonthKind = keyof MonthDocuments;

/**
 * Under which question the sums of a month are kept; of one sheet, or of all of them together. Those of habits and hands
 * are kept in pieces, one a technician, in the order in which they come in the month.
 */
export const monthQuestion = (kind: MonthKind, month: string, sheet?: string): string =>
  JSON.stringify([kind, month, ...(sheet === undefined ? [] : [sheet])]);

/** The sums of habits of a month from what is kept; null where there are none. */
export const habitMonth = (documentOf: DocumentOf, month: string, sheet?: string): HabitMonth | null =>
  byTechnician(documentOf, monthQuestion('habits', month, sheet)) as HabitMonth | null;

/** The same of hands. */
export const handMonth = (documentOf: DocumentOf, month: string, sheet?: string): HandMonth[] | null =>
  byTechnician(documentOf, monthQuestion('hands', month, sheet))?.map(([, sums]) => sums as HandMonth) ??
  null;

/** What is kept under a question; null or undefined where there is nothing. */
export type DocumentOf = (question: string) => unknown;

/** Those of the technicians that are kept. */
function byTechnician(
  documentOf: DocumentOf,
  question: string,
): [technician: string, sums: unknown][] | null {
  const index = (documentOf(question) ?? null) as PieceIndex | null;
  if (index === null) return null;
  return index.pieces.flatMap((technician): [string, unknown][] => {
    const sums = documentOf(pieceQuestion(question, technician)) ?? null;
    return sums === null ? [] : [[technician, sums]];
  });
}

/** The months that a job counts in, with the questions under which it is summed there. */
export function monthsOfJob(
  { begunAt, sheet, rounds }: Pick<JobShare, 'begunAt' | 'sheet' | 'rounds'>,
  timeZone: string,
): Map<string, string[]> {
  const begun = monthOf(begunAt, timeZone);
  const measured = new Set(rounds.map(({ at }) => monthOf(at, timeZone)));
  return new Map(
    [...new Set([begun, ...measured])].map((month) => [
      month,
      [
        monthQuestion('work', month),
        ...(month === begun ? questionsOf('habits', month, sheet) : []),
        ...(measured.has(month) ? questionsOf('hands', month, sheet) : []),
      ],
    ]),
  );
}

/** Which sums are told: under these questions, and of habits and hands those of these technicians. */
export interface OnlySums {
  questions: ReadonlySet<string>;
  technicians: ReadonlySet<string>;
}

/** Sums by month and technician, over all sheets and by sheet: their number follows the months, not the readings. */
export class MonthSums {
  readonly #timeZone: string;
  readonly #only: OnlySums | null;
  readonly #habits = new Map<string, Map<string, TallySum | null>>();
  readonly #hands = new Map<string, Map<string, HandSums | null>>();
  readonly #work = new Map<string, { month: string; sums: WorkSums }>();

  /** @param only what is summed; all where it is null. */
  constructor(timeZone: string, only: OnlySums | null = null) {
    this.#timeZone = timeZone;
    this.#only = only;
  }

  /**
   * Tallies count in the month in which the job was begun; what is summed of settings and repeats counts in the month
   * of its round.
   * @throws RangeError where a tally that is summed was not asked for.
   */
  add(share: JobShare): void {
    const { job, begunAt, sheet, tallies, rounds } = share;
    this.#workOf(begunAt)?.addJob(share);
    for (const { at, errors } of rounds) this.#workOf(at)?.addRound(job, errors);
    for (const question of this.#asked('habits', begunAt, sheet)) {
      const month = within(this.#habits, question, () => new Map<string, TallySum | null>());
      for (const [technician, tally] of tallies) {
        const sum = within(month, technician, () => this.#ofAsked(technician, () => new TallySum()));
        if (sum === null) continue;
        if (tally === null) throw new RangeError(`Of job ${job} a tally is summed that was not asked for.`);
        sum.add(tally);
      }
    }
    for (const { at, repeats, errors } of rounds)
      for (const question of this.#asked('hands', at, sheet)) {
        const month = within(this.#hands, question, () => new Map<string, HandSums | null>());
        const sumsOf = (technician: string) =>
          within(month, technician, () => this.#ofAsked(technician, () => new HandSums()));
        for (const [technician, own] of repeats) sumsOf(technician)?.addRepeats(own);
        for (const [technician, own] of grouped(errors, (error) => error.technician))
          sumsOf(technician)?.addErrors(own);
      }
  }

  /** The months that have sums, in their order. */
  months(): string[] {
    return [...this.#work.values()].map(({ month }) => month).sort();
  }

  /** The sums, by the question under which they are kept: of all technicians which there are, and the sums asked for. */
  documents(): [question: string, document: PieceIndex | HabitTally | HandMonth | WorkMonth][] {
    return [
      ...[...this.#habits].flatMap(([question, month]) => inPieces(question, month, (sum) => sum.told())),
      ...[...this.#hands].flatMap(([question, month]) =>
        inPieces(question, month, (sums, technician) => sums.told(technician)),
      ),
      ...[...this.#work].map(([question, { sums }]): [string, WorkMonth] => [question, sums.told()]),
    ];
  }

  #ofAsked<Sums>(technician: string, sums: () => Sums): Sums | null {
    return this.#only?.technicians.has(technician) === false ? null : sums();
  }

  #workOf(at: number): WorkSums | null {
    const month = monthOf(at, this.#timeZone);
    const question = monthQuestion('work', month);
    if (this.#only?.questions.has(question) === false) return null;
    return within(this.#work, question, () => ({ month, sums: new WorkSums() })).sums;
  }

  #asked(kind: 'habits' | 'hands', at: number, sheet: string | null): string[] {
    const questions = questionsOf(kind, monthOf(at, this.#timeZone), sheet);
    return this.#only === null
      ? questions
      : questions.filter((question) => this.#only?.questions.has(question));
  }
}

function inPieces<Sums, Told>(
  question: string,
  month: ReadonlyMap<string, Sums | null>,
  told: (sums: Sums, technician: string) => Told,
): [string, PieceIndex | Told][] {
  return [
    [question, { pieces: [...month.keys()] }],
    ...[...month].flatMap(([technician, sums]): [string, Told][] =>
      sums === null ? [] : [[pieceQuestion(question, technician), told(sums, technician)]],
    ),
  ];
}

const questionsOf = (kind: 'habits' | 'hands', month: string, sheet: string | null): string[] => [
  monthQuestion(kind, month),
  ...(sheet === null ? [] : [monthQuestion(kind, month, sheet)]),
];

const NONE = { n: 0, mean: 0, ss: 0 };

/** One technician in one month. */
class HandSums {
  readonly #cells = new Map<string, HandCell>();
  readonly #repeats = new Map<string, Repeats>();
  readonly #rounds = new Map<string, RoundMeans>();

  addRepeats(repeats: readonly Repeats[]): void {
    for (const { gauge, section, df, ss } of repeats) {
      const key = JSON.stringify([gauge, section]);
      const sum = within(this.#repeats, key, () => ({ gauge, section, df: 0, ss: 0 }));
      sum.df += df;
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
        section,
        side,
        gauge,
        distance,
        readingDf: 0,
        readingSs: 0,
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
