import { randomUUID } from 'node:crypto';
import { setImmediate as breathe } from 'node:timers/promises';
import {
  monthQuestion,
  monthsOfJob,
  MonthSums,
  pieceQuestion,
  ShopQuestions,
  Standing,
  type Documents,
  type HabitMonth,
  type HandMonth,
  type JobShare,
  type MonthOfShop,
  type PieceIndex,
  type WorkMonth,
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
import { HeldStandings, type Held } from './held-standings';
import { MADE_FROM, MadeFrom } from './made-from';
import { asJson, followed, jsonText, keepFollowed, type Newer, type StoredFit } from './stored-fit';
import { newShares, shareStamp, storedShares, updateShares, waitingShares } from './update-shares';

const PIECED = ['hands', 'signal-charts', 'rate-jobs'] as const;
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
  const shares = await newShares(shop, fit, timeZone, waiting);
  await breathe();
  const changed = await changedMonths(shop, fit, timeZone, shares);
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
  years: Set<string>;
  /** Whose sums they are; everybody's where it is not said. */
  technicians?: ReadonlySet<string>;
}

async function changedMonths(
  shop: ShopId,
  fit: StoredFit,
  timeZone: string,
  shares: readonly { job: string; document: JobShare | null }[],
): Promise<ChangedMonths> {
  const now = new Map(shares.map(({ job, document }) => [job, document]));
  const questions = new Set<string>();
  const months = new Set<string>();
  const technicians = new Set<string>();
  const touch = (share: JobShare): void => {
    for (const technician of techniciansOf(share)) technicians.add(technician);
    for (const [month, own] of monthsOfJob(share, timeZone)) {
      months.add(month);
      for (const question of own) questions.add(question);
    }
  };
  for await (const before of storedShares(shop, [...now.keys()])) touch(before);
  for (const share of now.values()) if (share !== null) touch(share);
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
  ))
    known.set(share.job, share);
  const sums = new MonthSums(timeZone, questions);
  for (const job of await jobsInOrder(shop, numbers)) {
    const share = now.get(job) ?? known.get(job);
    if (share !== undefined) sums.add(share);
  }
  const documents = new Map<string, unknown>(sums.documents());
  return {
    documents,
    gone: [...questions].filter((question) => !documents.has(question)),
    years: new Set([...months].map(yearOf)),
    technicians,
  };
}

/** Has the years that changed taken anew: the months of each that changed, and the others as they are kept. */
async function takeYears(
  shop: ShopId,
  fit: StoredFit,
  { standing, months }: Pick<Held, 'standing' | 'months'>,
  { documents, gone, years, technicians }: ChangedMonths,
): Promise<void> {
  const none = new Set(gone);
  for (const year of years) {
    // Pages are answered between.
    await breathe();
    const questions = MONTHS.flatMap((month) => KINDS.map((kind) => monthQuestion(kind, `${year}-${month}`)));
    const known = months.get(year) ?? new Map<string, unknown>();
    if (known.size === 0)
      for (const [question, text] of await fitAnswerTexts(shop, fit.id, questions))
        known.set(question, JSON.parse(text));
    for (const question of questions) {
      if (none.has(question)) known.delete(question);
      else if (documents.has(question)) known.set(question, documents.get(question));
    }
    keepNewest(months, year, known);
    const documentOf = (question: string): unknown => known.get(question);
    standing.setYear(
      year,
      MONTHS.flatMap((month) => monthOf(`${year}-${month}`, documentOf)),
      technicians,
    );
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

/** Everybody who adds anything in a job. */
const techniciansOf = ({ measured, tallies, missets }: JobShare): string[] => [
  ...measured.hands.map(({ technician }) => technician),
  ...tallies.map(([technician]) => technician),
  ...missets.map(([technician]) => technician),
];

/** A standing from what is kept of all months. */
async function standingOf(shop: ShopId, fit: StoredFit, revision: string): Promise<Held> {
  const standing = new Standing();
  const held: Held = {
    ...{ fit: fit.id, revision, standing, months: new Map(), written: new Map() },
    questions: new ShopQuestions(fit.learned, fit.atWork),
  };
  const index = await fitAnswerTexts(shop, fit.id, ['choices']);
  const { months } = JSON.parse(index.get('choices') ?? '{"months":[]}') as { months: string[] };
  for (const year of new Set(months.map(yearOf)))
    await takeYears(shop, fit, held, { documents: new Map(), gone: [], years: new Set([year]) });
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
      ...{ fit: fit.id, revision, standing, questions },
      ...{ months: new Map(), written: new Map(documents) },
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
        changed: shares.map((share) => ({ ...share, document: asJson(share.document) })),
      },
      answers: { texts, gone: [...changed.gone, ...gone] },
      madeFrom: { question: MADE_FROM, before: madeFrom.before },
      stored: followed(fit, newer ?? fit).stored,
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

const yearOf = (month: string): string => month.slice(0, -'-01'.length);

/** Nothing where the month has nothing. */
function monthOf(month: string, documentOf: (question: string) => unknown): MonthOfShop[] {
  const work = documentOf(monthQuestion('work', month)) as WorkMonth | undefined;
  if (work === undefined) return [];
  const habits = documentOf(monthQuestion('habits', month)) as HabitMonth | undefined;
  const hands = documentOf(monthQuestion('hands', month)) as HandMonth[] | undefined;
  return [{ month, habits: habits ?? [], hands: hands ?? [], work }];
}
