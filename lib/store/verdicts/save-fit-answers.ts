import { isDeepStrictEqual } from 'node:util';
import { transaction, type Queries } from '@/lib/store/connection/database';
import { JsonCell } from '@/lib/store/dialect';
import { inParts } from '@/lib/measure/in-parts';
import { insertRows } from '@/lib/store/sql/insert-rows';
import type { Json, ShopId } from '@/lib/store/types';

const ROWS_AT_ONCE = 500;

/**
 * Keeps the answers that were worked out with a fit, all of them or none. Those of earlier fits are let go: nobody
 * asks for them any more. An answer that came out as before is not written again: of a long history most do.
 * @param stay the questions whose answers stay as they are, whatever they are. All others have been asked.
 */
export async function saveFitAnswers(
  shop: ShopId,
  fit: number,
  answers: Readonly<Record<string, Json>>,
  stay: ReadonlySet<string> = new Set(),
): Promise<void> {
  await transaction(shop, async (queries) => {
    // Somebody may have been removed meanwhile, and the fit with them.
    if ((await queries.shopFit.findFirst({ where: { shopId: shop, id: fit } })) === null) return;
    const known = (await takenOver(queries, shop, fit)).filter((question) => !stay.has(question));
    const gone = known.filter((question) => !(question in answers));
    const fresh = new Set(Object.keys(answers));
    for (const questions of inParts(known, ROWS_AT_ONCE)) {
      const rows = await queries.fitAnswer.findMany({
        where: { shopId: shop, fitId: fit, question: { in: questions } },
        select: { question: true, document: true },
      });
      for (const { question, document } of rows)
        if (isDeepStrictEqual(document, answers[question])) fresh.delete(question);
    }
    for (const questions of inParts([...gone, ...fresh], ROWS_AT_ONCE))
      await queries.fitAnswer.deleteMany({
        where: { shopId: shop, fitId: fit, question: { in: questions } },
      });
    await insertRows(
      queries,
      'FitAnswer',
      ['shopId', 'fitId', 'question', 'document'],
      [...fresh].map((question) => [shop, fit, question, new JsonCell(answers[question] ?? null)]),
    );
  });
}

/** The questions that have an answer, those of the fit before this one counted as this one's from now on. */
async function takenOver(queries: Queries, shop: ShopId, fit: number): Promise<string[]> {
  const before = await queries.fitAnswer.findFirst({
    where: { shopId: shop, fitId: { lte: fit } },
    orderBy: { fitId: 'desc' },
    select: { fitId: true },
  });
  if (before === null) return [];
  await queries.fitAnswer.deleteMany({ where: { shopId: shop, fitId: { lt: before.fitId } } });
  if (before.fitId !== fit)
    await queries.fitAnswer.updateMany({
      where: { shopId: shop, fitId: before.fitId },
      data: { fitId: fit },
    });
  const rows = await queries.fitAnswer.findMany({
    where: { shopId: shop, fitId: fit },
    select: { question: true },
  });
  return rows.map(({ question }) => question);
}
