import { among } from '@/lib/store/sql/among';
import { ask, askAgain } from '@/lib/store/sql/ask';
import type { Json, ShopId } from '@/lib/store/types';

/** The newest answer to a question; null before the first. */
export async function fitAnswer(shop: ShopId, question: string): Promise<Json> {
  // The few fits of a shop lead: an answer is found by its fit and its question, however many shops there are.
  const [row] = await askAgain<{ document: Json }>`
    SELECT a."document" FROM "ShopFit" f JOIN "FitAnswer" a ON a."fitId" = f."id"
    WHERE f."shopId" = ${shop} AND a."question" = ${question} ORDER BY f."id" DESC LIMIT 1`;
  return row?.document ?? null;
}

/** The answers to several questions, of one fit, the newest that was asked `of`; those that it has none to are left out. */
export async function fitAnswers(
  shop: ShopId,
  of: string,
  questions: readonly string[],
): Promise<Map<string, Json>> {
  const rows = await askAgain<{ question: string; document: Json }>`
    SELECT a."question", a."document" FROM "FitAnswer" a
    WHERE a."question" ${among(questions)} AND a."fitId" = (
      SELECT f."id" FROM "ShopFit" f JOIN "FitAnswer" n ON n."fitId" = f."id"
      WHERE f."shopId" = ${shop} AND n."question" = ${of} ORDER BY f."id" DESC LIMIT 1)`;
  return new Map(rows.map(({ question, document }) => [question, document]));
}

/** Whether a fit has its answers. */
export async function hasFitAnswers(shop: ShopId, fit: number): Promise<boolean> {
  const rows =
    await askAgain`SELECT 1 AS "one" FROM "FitAnswer" WHERE "shopId" = ${shop} AND "fitId" = ${fit} LIMIT 1`;
  return rows.length > 0;
}

/** The answers that a fit has to some questions, as texts of JSON: what is read once need not be held as plain data. */
export async function fitAnswerTexts(
  shop: ShopId,
  fit: number,
  questions: readonly string[],
): Promise<Map<string, string>> {
  const rows = await ask<{ question: string; text: string }>`
    SELECT "question", CAST("document" AS TEXT) AS "text" FROM "FitAnswer"
    WHERE "shopId" = ${shop} AND "fitId" = ${fit} AND "question" ${among(questions)}`;
  return new Map(rows.map(({ question, text }) => [question, text]));
}
