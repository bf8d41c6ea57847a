import { database, transaction } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Json, ShopId } from '@/lib/store/types';

/** Keeps the answers that were worked out with a fit, all of them or none; those of the same fit before are replaced. */
export async function saveFitAnswers(
  shop: ShopId,
  fit: number,
  answers: Readonly<Record<string, Json>>,
): Promise<void> {
  await transaction(shop, async (queries) => {
    // Somebody may have been removed meanwhile, and the fit with them.
    if ((await queries.shopFit.findFirst({ where: { shopId: shop, id: fit } })) === null) return;
    await queries.fitAnswer.deleteMany({ where: { shopId: shop, fitId: fit } });
    await queries.fitAnswer.createMany({
      data: Object.entries(answers).map(([question, document]) => ({
        shopId: shop,
        fitId: fit,
        question,
        document: document === null ? Prisma.JsonNull : document,
      })),
    });
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

/** Whether a fit has its answers. */
export async function hasFitAnswers(shop: ShopId, fit: number): Promise<boolean> {
  return (await database().fitAnswer.findFirst({ where: { shopId: shop, fitId: fit } })) !== null;
}
