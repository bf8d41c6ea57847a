import { ShopQuestions } from '@/lib/assess/answers';
import { saveFitAnswers, shareStamp, shopOfId, type Json, type ShopId } from '@/lib/store';
import { AnswersOfBefore } from './answers-of-before';
import { asJson, type StoredFit } from './stored-fit';
import { storedShares, updateShares } from './update-shares';

/** The shop's questions, with all that its jobs add to them. */
export interface Asked {
  questions: ShopQuestions;
  before: AnswersOfBefore;
  /** Of what they were added up from. */
  shares: unknown;
  /** The questions of months that have to be answered anew; all where it is null. */
  months: ReadonlySet<string> | null;
}

/**
 * Asks the shop's questions by a fit and its verdicts. What a job adds to the answers is worked out anew only where it
 * changed, and of the sums by month only those that it counts in.
 */
export async function askAnew(shop: ShopId, fit: StoredFit): Promise<Asked> {
  const timeZone = (await shopOfId(shop))?.timeZone ?? 'UTC';
  const before = await AnswersOfBefore.of(shop, [fit.program, fit.learned, timeZone]);
  const stamp = async () => [fit.id, timeZone, await shareStamp(shop, fit.id)];
  const known = before.restOn(await stamp());
  const touched = await updateShares(shop, fit, timeZone);
  const shares = await stamp();
  const months = known ? touched : null;
  const questions = new ShopQuestions(fit.learned, timeZone, months);
  for await (const share of storedShares(shop)) questions.add(share);
  return { questions, before, shares, months };
}

/** Keeps the answers with the fit. */
export async function keepAnswers(
  shop: ShopId,
  fit: StoredFit,
  { questions, before, shares, months }: Asked,
): Promise<void> {
  const answers: Record<string, Json> = {};
  for (const [question, answer] of Object.entries(questions.answers(before.known)))
    answers[question] = asJson(answer);
  for (const [question, sums] of questions.months()) answers[question] = asJson(sums);
  const all = { ...answers, ...before.madeFrom(shares) };
  await saveFitAnswers(shop, fit.id, all, months && new Set([...Object.keys(all), ...months]));
}
