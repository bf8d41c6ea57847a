import type { RoundVerdict } from '@/lib/assess';
import { ShopQuestions } from '@/lib/assess/answers';
import { firstReadings } from '@/lib/assess/habits';
import type { Job, Reading } from '@/lib/measure';
import { readingsFor, saveFitAnswers, shopOfId, verdictsFor, type Json, type ShopId } from '@/lib/store';
import { AnswersOfBefore } from './answers-of-before';
import { asJson, type StoredFit } from './stored-fit';

const JOBS_AT_ONCE = 200;
/** More rounds than so many jobs have. */
const ROUNDS_AT_ONCE = 5_000;

/**
 * Answers the shop's questions by a fit and its verdicts, and keeps the answers with the fit.
 * @param jobs all of the shop's, in the order of time.
 */
export async function updateAnswers(shop: ShopId, fit: StoredFit, jobs: readonly Job[]): Promise<void> {
  const timeZone = (await shopOfId(shop))?.timeZone ?? 'UTC';
  const questions = new ShopQuestions(fit.learned, timeZone);
  for (let start = 0; start < jobs.length; start += JOBS_AT_ONCE) {
    const batch = jobs.slice(start, start + JOBS_AT_ONCE);
    const numbers = batch.map(({ job }) => job);
    const [verdicts, firsts] = await Promise.all([
      verdictsByJob(shop, numbers),
      readingsOf(shop, numbers).then(firstReadings),
    ]);
    for (const job of batch) questions.add(job, verdicts.get(job.job) ?? [], firsts);
  }
  const before = await AnswersOfBefore.of(shop, [fit.program, fit.learned, timeZone]);
  const answers: Record<string, Json> = {};
  for (const [question, answer] of Object.entries(questions.answers(before.known)))
    answers[question] = asJson(answer);
  for (const [question, sums] of questions.months()) answers[question] = asJson(sums);
  await saveFitAnswers(shop, fit.id, { ...answers, ...before.madeFrom() });
}

async function verdictsByJob(shop: ShopId, jobs: readonly string[]): Promise<Map<string, RoundVerdict[]>> {
  const byJob = new Map<string, RoundVerdict[]>();
  for (const { job, document } of await verdictsFor(shop, { jobs, limit: ROUNDS_AT_ONCE })) {
    const own = byJob.get(job) ?? [];
    // The document is the verdict that this program stored.
    own.push(document as unknown as RoundVerdict);
    byJob.set(job, own);
  }
  return byJob;
}

async function readingsOf(shop: ShopId, jobs: readonly string[]): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const reading of readingsFor(shop, { jobs })) readings.push(reading);
  return readings;
}
