import { database, transaction } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Json, ShopId } from '@/lib/store/types';

const ROWS_AT_ONCE = 500;

/**
 * Keeps the answers that were worked out with a fit, all of them or none. Those of the same fit and of earlier ones are
 * let go: nobody asks for them any more.
 */
export async function saveFitAnswers(
  shop: ShopId,
  fit: number,
  answers: Readonly<Record<string, Json>>,
): Promise<void> {
  await transaction(shop, async (queries) => {
    // Somebody may have been removed meanwhile, and the fit with them.
    if ((await queries.shopFit.findFirst({ where: { shopId: shop, id: fit } })) === null) return;
    await queries.fitAnswer.deleteMany({ where: { shopId: shop, fitId: { lte: fit } } });
    const rows = Object.entries(answers).map(([question, document]) => ({
      shopId: shop,
      fitId: fit,
      question,
      document: document === null ? Prisma.JsonNull : document,
    }));
    for (let start = 0; start < rows.length; start += ROWS_AT_ONCE)
      await queries.fitAnswer.createMany({ data: rows.slice(start, start + ROWS_AT_ONCE) });
  });
}

/** The newest answer to a question; null before the first. */
export async function fitAnswer(shop: ShopId, question: string): Promise<Json> {
  const row = await database().fitAnswer.findFirst({
    where: { shopId: shop, question },
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
    where: { shopId: shop, question: of },
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
