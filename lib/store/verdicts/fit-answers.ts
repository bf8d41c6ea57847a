import { database } from '@/lib/store/connection/database';
import type { Json, ShopId } from '@/lib/store/types';

/** The newest answer to a question; null before the first. */
export async function fitAnswer(shop: ShopId, question: string): Promise<Json> {
  const row = await database().fitAnswer.findFirst({
    where: { fitId: { in: await fitsOf(shop) }, question },
    orderBy: { fitId: 'desc' },
    select: { document: true },
  });
  return (row?.document ?? null) as Json;
}

/** The answers to several questions, of one fit, the newest that was asked `of`; those that it has none to are left out. */
export async function fitAnswers(
  shop: ShopId,
  of: string,
  questions: readonly string[],
): Promise<Map<string, Json>> {
  const newest = await database().fitAnswer.findFirst({
    where: { fitId: { in: await fitsOf(shop) }, question: of },
    orderBy: { fitId: 'desc' },
    select: { fitId: true },
  });
  if (newest === null) return new Map();
  const rows = await database().fitAnswer.findMany({
    where: { shopId: shop, fitId: newest.fitId, question: { in: [...questions] } },
    select: { question: true, document: true },
  });
  return new Map(rows.map(({ question, document }) => [question, document as Json]));
}

/** Whether a fit has its answers. */
export async function hasFitAnswers(shop: ShopId, fit: number): Promise<boolean> {
  return (await database().fitAnswer.findFirst({ where: { shopId: shop, fitId: fit } })) !== null;
}

/** The few fits that a shop keeps: an answer is found by its fit and its question, however many shops there are. */
async function fitsOf(shop: ShopId): Promise<number[]> {
  const fits = await database().shopFit.findMany({ where: { shopId: shop }, select: { id: true } });
  return fits.map(({ id }) => id);
}
