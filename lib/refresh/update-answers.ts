import { randomUUID } from 'node:crypto';
import { setImmediate as breathe } from 'node:timers/promises';
import {
  changedHands,
  habitMonth,
  handMonth,
  monthQuestion,
  monthsOfJob,
  MonthSums,
  pieceQuestion,
  ShopQuestions,
  Standing,
  type DocumentOf,
  type Documents,
  type JobShare,
  type MonthOfShop,
  type PieceIndex,
  type WorkMonth,
  type YearChange,
} from '@/lib/assess/answers';
import {
  fitAnswerTexts,
  jobsInOrder,
  saveFigures,
  saveFitAnswers,
  shopOfId,
  type Json,
  type NewJobShare,
  type ShopId,
} from '@/lib/store';
import { yearOf } from '@/lib/measure/month-of';
import { HeldStandings, type Held } from './held-standings';
import { keptShare } from './kept-share';
import { MADE_FROM, MadeFrom } from './made-from';
import { asJson, followed, jsonText, keepFollowed, type Newer, type StoredFit } from './stored-fit';
import { newShares, shareStamp, storedShares, updateShares, waitingShares } from './update-shares';

const PIECED = ['hands', 'missets', 'signal-charts', 'rate-jobs'] as const;
/** Of each, what is kept of its months: some megabytes. */
const YEARS_HELD = 2;
/** With more jobs waiting, their shares are kept a part at a time, and everything is added up anew. */
const FEW_JOBS = 50;

/** The shop's questions asked anew, before the answers are kept. */
export interface Asked {
  standing: Standing;
  questions: ShopQuestions;
  /** Keeps the answers with the fit as it is from now on. @returns not, where somebody else did meanwhile */
  keep: (fit: StoredFit, newer?: Newer) => Promise<boolean>;
}

/**
 * Asks the shop's questions by a fit and its verdicts. What a job adds to the answers is worked out anew only where it
 * changed, and of the sums by month only those that it counts in, or counted in before: the work is that of a few
 * months, however long the history is. Where nothing is kept to go on with, all is added up.
 * @param only the numbers of the jobs that changed, where it is known that no others did: then it is not added up anew.
 * @returns null where that had to be done.
 */
export async function askAnew(shop: ShopId, fit: StoredFit): Promise<Asked>;
export async function askAnew(shop: ShopId, fit: StoredFit, only: readonly string[]): Promise<Asked | null>;
export async function askAnew(shop: ShopId, fit: StoredFit, only?: readonly string[]): Promise<Asked | null> {
  const timeZone = (await shopOfId(shop))?.timeZone ?? 'UTC';
  const madeFrom = await MadeFrom.of(shop, fit, timeZone);
  const waiting = await waitingShares(shop, fit, timeZone, only);
  if (madeFrom.revision === null || waiting.length > FEW_JOBS) {
    if (only !== undefined) return null;
    await updateShares(shop, fit, timeZone, waiting);
    return askAll(shop, fit, timeZone);
  }
  const before = new Map<string, JobShare>();
  for await (const share of storedShares(
    shop,
    waiting.map(({ job }) => job),
  ))
    before.set(share.job, share);
  const shares = await newShares(shop, fit, timeZone, waiting, before);
  await breathe();
  const changed = await changedMonths(shop, fit, timeZone, { before, shares });
  const held =
    HeldStandings.take(shop, fit.id, madeFrom.revision) ?? (await standingOf(shop, fit, madeFrom.revision));
  await takeYears(shop, fit, held, changed);
  return {
    standing: held.standing,
    questions: held.questions,
    keep: keeping(shop, { madeFrom, timeZone, shares, changed, held }),
  };
}

/** The questions of months whose sums changed: what they are now, and those that are none any more. */
interface ChangedMonths {
  documents: Documents;
  gone: string[];
  /** Which months, and whose sums. */
  change: YearChange;
}

/** What jobs added before, and what they add now. */
interface ChangedShares {
  before: ReadonlyMap<string, JobShare>;
  shares: readonly { job: string; document: JobShare | null }[];
}

async function changedMonths(
  shop: ShopId,
  fit: StoredFit,
  timeZone: string,
  { before, shares }: ChangedShares,
): Promise<ChangedMonths> {
  const now = new Map(shares.map(({ job, document }) => [job, document]));
  const questions = new Set<string>();
  const months = new Set<string>();
  const touch = (share: JobShare): void => {
    for (const [month, own] of monthsOfJob(share, timeZone)) {
      months.add(month);
      for (const question of own) questions.add(question);
    }
  };
  for (const share of [...before.values(), ...now.values()]) if (share !== null) touch(share);
  const technicians = new Set(
    [...now].flatMap(([job, share]) => [...changedHands(before.get(job) ?? null, share)]),
  );
  const texts = await fitAnswerTexts(
    shop,
    fit.id,
    [...months].map((month) => monthQuestion('work', month)),
  );
  const others = [...texts.values()].flatMap((text) => (JSON.parse(text) as WorkMonth).jobs);
  const numbers = [...new Set([...others, ...now.keys()])];
  const known = new Map<string, JobShare>();
  for await (const share of storedShares(
    shop,
    numbers.filter((job) => !now.has(job)),
    technicians,
  ))
    known.set(share.job, share);
  const sums = new MonthSums(timeZone, { questions, technicians });
  for (const job of await jobsInOrder(shop, numbers)) {
    const share = now.get(job) ?? known.get(job);
    if (share !== undefined) sums.add(share);
  }
  const documents = new Map<string, unknown>(sums.documents());
  return {
    documents,
    gone: [...questions]
      .flatMap((question) => [question, ...[...technicians].map((one) => pieceQuestion(question, one))])
      .filter((question) => !documents.has(question)),
    change: { months, technicians },
  };
}

/** Has the years that changed taken anew: what of each changed, and the rest as it is kept or stands. */
async function takeYears(
  shop: ShopId,
  fit: StoredFit,
  { standing, months }: Pick<Held, 'standing' | 'months'>,
  { documents, gone, change }: ChangedMonths,
): Promise<void> {
  const fresh = new Map([...gone.map((question) => [question, null] as const), ...documents]);
  for (const year of new Set([...change.months].map(yearOf))) {
    // Pages are answered between.
    await breathe();
    const known = months.get(year) ?? new Map<string, unknown>();
    const readAll = async (questions: readonly string[]): Promise<void> => {
      for (const question of questions)
        if (fresh.has(question)) known.set(question, fresh.get(question) ?? null);
      await read(shop, fit, known, questions);
    };
    keepNewest(months, year, known);
    const before = standing.monthsOf(year);
    // What was done in the other months stands as it was, if anything is known of the year.
    const stands = (month: string): boolean => before !== null && !change.months.has(month);
    const own = MONTHS.map((month) => `${year}-${month}`).filter(
      (month) => !stands(month) || before?.includes(month) === true,
    );
    const indexes = own.flatMap((month) =>
      KINDS.filter((kind) => kind !== 'work' || !stands(month)).map((kind) => monthQuestion(kind, month)),
    );
    await readAll(indexes);
    const whose = (technician: string): boolean => before === null || change.technicians.has(technician);
    await readAll(piecesIn(known, indexes, whose));
    const documentOf = (question: string): unknown => known.get(question);
    standing.setYear(
      year,
      own.flatMap((month) => {
        if (!stands(month)) return monthOf(month, documentOf);
        return { ...sumsOfHands(month, documentOf), work: null };
      }),
      change,
    );
  }
}

/** The questions of the pieces behind some indexes. */
const piecesIn = (
  known: ReadonlyMap<string, unknown>,
  indexes: readonly string[],
  whose: (technician: string) => boolean,
): string[] =>
  indexes.flatMap((question) =>
    ((known.get(question) as PieceIndex | null)?.pieces ?? [])
      .filter(whose)
      .map((technician) => pieceQuestion(question, technician)),
  );

/** Reads what is kept under these questions and not known yet; what is not kept is known to be null. */
async function read(
  shop: ShopId,
  fit: StoredFit,
  known: Map<string, unknown>,
  questions: readonly string[],
): Promise<void> {
  const asked = questions.filter((question) => !known.has(question));
  if (asked.length === 0) return;
  const texts = await fitAnswerTexts(shop, fit.id, asked);
  for (const question of asked) {
    const text = texts.get(question);
    known.set(question, text === undefined ? null : JSON.parse(text));
  }
}

/** Readings come of the same few months again and again: what is kept of those years need not be read each time. */
function keepNewest(months: Held['months'], year: string, known: Map<string, unknown>): void {
  months.delete(year);
  months.set(year, known);
  for (const oldest of months.keys()) {
    if (months.size <= YEARS_HELD) break;
    months.delete(oldest);
  }
}

/** A standing from what is kept of all months. */
async function standingOf(shop: ShopId, fit: StoredFit, revision: string): Promise<Held> {
  const standing = new Standing();
  const held: Held = {
    fit: fit.id,
    revision,
    standing,
    months: new Map(),
    written: new Map(),
    questions: new ShopQuestions(fit.learned, fit.atWork),
  };
  const index = await fitAnswerTexts(shop, fit.id, ['choices']);
  const { months } = JSON.parse(index.get('choices') ?? '{"months":[]}') as { months: string[] };
  for (const year of new Set(months.map(yearOf))) {
    await breathe();
    const own = months.filter((month) => yearOf(month) === year);
    const indexes = own.flatMap((month) => KINDS.map((kind) => monthQuestion(kind, month)));
    const known = new Map<string, unknown>();
    await read(shop, fit, known, indexes);
    await read(
      shop,
      fit,
      known,
      piecesIn(known, indexes, () => true),
    );
    standing.setYear(
      year,
      own.flatMap((month) => monthOf(month, (question) => known.get(question))),
    );
  }
  return held;
}

/** Everything added up from all shares. */
async function askAll(shop: ShopId, fit: StoredFit, timeZone: string): Promise<Asked> {
  const madeFrom = await MadeFrom.of(shop, fit, timeZone);
  const sums = new MonthSums(timeZone);
  for await (const share of storedShares(shop)) sums.add(share);
  const months = new Map<string, unknown>(sums.documents());
  const standing = new Standing();
  const years = new Map<string, MonthOfShop[]>();
  for (const month of sums.months())
    years.set(yearOf(month), [
      ...(years.get(yearOf(month)) ?? []),
      ...monthOf(month, (question) => months.get(question)),
    ]);
  for (const [year, own] of years) standing.setYear(year, own);
  const questions = new ShopQuestions(fit.learned, fit.atWork);
  const keep = async (after: StoredFit, newer?: Newer): Promise<boolean> => {
    const { documents, kept } = questions.answers(standing, madeFrom.isKept);
    const revision = randomUUID();
    const answers: Record<string, Json> = { [MADE_FROM]: madeFrom.after(revision) };
    for (const [question, document] of [...months, ...documents]) answers[question] = asJson(document);
    if (newer !== undefined) await keepFollowed(shop, after, newer);
    await saveFitAnswers(shop, fit.id, answers, new Set(kept));
    HeldStandings.keep(shop, {
      fit: fit.id,
      revision,
      standing,
      questions,
      months: new Map(),
      written: new Map(documents),
    });
    return true;
  };
  return { standing, questions, keep };
}

interface Change {
  madeFrom: MadeFrom;
  timeZone: string;
  shares: readonly (Omit<NewJobShare, 'document'> & { document: JobShare | null })[];
  changed: ChangedMonths;
  held: Held;
}

const keeping =
  (shop: ShopId, { madeFrom, timeZone, shares, changed, held }: Change) =>
  async (fit: StoredFit, newer?: Newer): Promise<boolean> => {
    for (const part of held.questions.parts(held.standing, madeFrom.isKept)) {
      await breathe();
      part();
    }
    await breathe();
    const { documents, kept } = held.questions.answers(held.standing, madeFrom.isKept);
    await breathe();
    const fresh = new Map(
      [...changed.documents, ...documents].filter(
        ([question, document]) => held.written.get(question) !== document,
      ),
    );
    const texts = new Map([...fresh].map(([question, document]) => [question, jsonText(document)]));
    if (held.written.size === 0)
      for (const [question, text] of await fitAnswerTexts(shop, fit.id, [...texts.keys()]))
        if (texts.get(question) === text) texts.delete(question);
    const stays = new Set<string>(kept);
    const before = held.written.size === 0 ? await writtenBefore(shop, fit.id) : held.written.keys();
    const gone = [...before].filter((question) => !documents.has(question) && !stays.has(question));
    const revision = randomUUID();
    texts.set(MADE_FROM, jsonText(madeFrom.after(revision)));
    const done = await saveFigures(shop, {
      fit: fit.id,
      shares: {
        madeBy: shareStamp(timeZone),
        changed: shares.map((share) => ({ ...share, document: keptShare(share.document) })),
      },
      answers: { texts, gone: [...changed.gone, ...gone] },
      madeFrom: { question: MADE_FROM, before: madeFrom.before },
      stored: followed(fit, newer ?? fit),
    });
    if (done) HeldStandings.keep(shop, { ...held, revision, written: new Map(documents) });
    return done;
  };

/** The pieces that answers are kept in, where this process did not write them. */
async function writtenBefore(shop: ShopId, fit: number): Promise<string[]> {
  const texts = await fitAnswerTexts(shop, fit, PIECED);
  return PIECED.flatMap((question) => {
    const { pieces } = JSON.parse(texts.get(question) ?? '{"pieces":[]}') as PieceIndex;
    return pieces.map((piece) => pieceQuestion(question, piece));
  });
}

const KINDS = ['habits', 'hands', 'work'] as const;
const MONTHS = Array.from({ length: 12 }, (_, i) => String(i + 1).padStart(2, '0'));

/** Nothing where the month has nothing. */
function monthOf(month: string, documentOf: DocumentOf): MonthOfShop[] {
  const work = (documentOf(monthQuestion('work', month)) ?? null) as WorkMonth | null;
  return work === null ? [] : [{ ...sumsOfHands(month, documentOf), work }];
}

function sumsOfHands(month: string, documentOf: DocumentOf): Omit<MonthOfShop, 'work'> {
  const hanging = documentOf(monthQuestion('hands', month)) as PieceIndex | null | undefined;
  return {
    month,
    habits: habitMonth(documentOf, month) ?? [],
    hands: handMonth(documentOf, month) ?? [],
    hanging: hanging?.pieces ?? [],
  };
}
