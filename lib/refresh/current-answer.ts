import {
  habitMonth,
  handMonth,
  missetsPiecesOf,
  monthQuestion,
  pieceQuestion,
  withBands,
  type Answers,
  type HandAnswer,
  type HandPiece,
  type HandsIndex,
  type MissetCount,
  type MonthDocuments,
  type MonthKind,
  type PiecedQuestion,
  type PieceIndex,
  type Question,
  type WorkMonth,
} from '@/lib/assess/answers';
import type { RateJob } from '@/lib/assess/rates';
import type { SignalChart } from '@/lib/assess/signals';
import { frozen, sameFrom } from '@/lib/memory';
import { fitAnswer, fitAnswers, type Json, type ShopId } from '@/lib/store';

/** The newest answer to one of the shop's questions, as this program stored it; null before the first. */
export async function currentAnswer<Asked extends Exclude<Question, PiecedQuestion>>(
  shop: ShopId,
  question: Asked,
): Promise<Answers[Asked] | null> {
  return (await fitAnswer(shop, question)) as unknown as Answers[Asked] | null;
}

/** What one technician comes for; null where there is none of this code. */
export async function currentHand(shop: ShopId, technician: string): Promise<HandAnswer | null> {
  const question = pieceQuestion('hands', technician);
  const found = await fitAnswers(shop, 'choices', ['hands', 'missets', question]);
  const [index, missets, hand] = [found.get('hands'), found.get('missets'), found.get(question)];
  if (index === undefined || hand === undefined) return null;
  // Until a shop has learned by this program, what stands there may be of one that did not keep these pieces.
  const pieces = missets === undefined ? [] : missetsPiecesOf(missets as unknown as PieceIndex, technician);
  const years = await piecesOf<readonly MissetCount[]>(shop, 'missets', pieces);
  return whole([hand as unknown as HandPiece, index as unknown as HandsIndex, ...years]);
}

/** Frozen, as documents are that are stored: pages keep what they made of the same. */
const whole = sameFrom(
  ([hand, index, ...years]: readonly [HandPiece, HandsIndex, ...(readonly MissetCount[])[]]) =>
    frozen({ ...withBands(hand, index), missets: years.flat() }),
);

/** Every series with its chart; null before the first answer. */
export async function currentCharts(shop: ShopId): Promise<readonly SignalChart[] | null> {
  const charts = await pieces<SignalChart>(shop, 'signal-charts');
  return charts === null ? null : together(charts);
}

const together = sameFrom((charts: readonly SignalChart[]) => frozen([...charts]));

/** The jobs behind the rates, in the order of time; null before the first answer. */
export async function currentRateJobs(shop: ShopId): Promise<readonly RateJob[] | null> {
  const years = await pieces<readonly RateJob[]>(shop, 'rate-jobs');
  return years === null ? null : inOne(years);
}

const inOne = sameFrom((years: readonly (readonly RateJob[])[]) => Object.freeze(years.flat()));

async function pieces<Piece>(shop: ShopId, question: PiecedQuestion): Promise<Piece[] | null> {
  const index = (await fitAnswer(shop, question)) as unknown as Partial<PieceIndex> | null;
  // Until a shop has learned by this program, what stands there may be of one that did not keep pieces.
  if (index?.pieces === undefined) return null;
  return piecesOf(shop, question, index.pieces);
}

async function piecesOf<Piece>(
  shop: ShopId,
  question: PiecedQuestion,
  pieces: readonly string[],
): Promise<Piece[]> {
  const questions = pieces.map((piece) => pieceQuestion(question, piece));
  const found = await fitAnswers(shop, 'choices', questions);
  return questions.flatMap((one) => {
    const piece: Json | undefined = found.get(one);
    return piece === undefined ? [] : [piece as unknown as Piece];
  });
}

/** The sums of some months, of one sheet or of all, as this program stored them with its newest answers. */
export async function currentMonths<Kind extends MonthKind>(
  shop: ShopId,
  kind: Kind,
  months: readonly string[],
  sheet?: string,
): Promise<{ month: string; sums: MonthDocuments[Kind] }[]> {
  const questions = months.map((month) => monthQuestion(kind, month, sheet));
  const found = await fitAnswers(shop, 'choices', questions);
  if (kind !== 'work') {
    const pieces = [...found].flatMap(([question, index]) =>
      ((index as unknown as Partial<PieceIndex>).pieces ?? []).map((piece) => pieceQuestion(question, piece)),
    );
    for (const [question, piece] of await fitAnswers(shop, 'choices', pieces)) found.set(question, piece);
  }
  const documentOf = (question: string): unknown => found.get(question);
  const READ: { [Of in MonthKind]: (month: string) => MonthDocuments[Of] | null } = {
    habits: (month) => habitMonth(documentOf, month, sheet),
    hands: (month) => handMonth(documentOf, month, sheet),
    work: (month) => (documentOf(monthQuestion('work', month, sheet)) ?? null) as WorkMonth | null,
  };
  return months.flatMap((month) => {
    const sums = READ[kind](month);
    return sums === null ? [] : [{ month, sums }];
  });
}
