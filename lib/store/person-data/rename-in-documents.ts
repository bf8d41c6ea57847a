import type { Queries } from '@/lib/store/connection/database';
import type { Json, ShopId } from '@/lib/store/types';
import { jsonWithout, type Renaming } from './without-person';

/**
 * Takes a person's names out of the documents that cannot be made again, reports and plans of trials; those that
 * can, fits with what jobs add to their answers, and verdicts, are let go and made again.
 */
export async function renameInDocuments(queries: Queries, shop: ShopId, renaming: Renaming): Promise<void> {
  await queries.roundVerdict.deleteMany({ where: { shopId: shop } });
  await queries.shopFit.deleteMany({ where: { shopId: shop } });
  for (const { id } of await queries.scheduledReport.findMany({
    where: { shopId: shop },
    select: { id: true },
  })) {
    const { document } = await queries.scheduledReport.findUniqueOrThrow({ where: { id } });
    const renamed = without(document as Json, renaming);
    if (renamed !== null)
      await queries.scheduledReport.update({ where: { id }, data: { document: renamed } });
  }
  for (const { id, plan } of await queries.trial.findMany({ where: { shopId: shop } })) {
    const renamed = without(plan as Json, renaming);
    if (renamed !== null) await queries.trial.update({ where: { id }, data: { plan: renamed } });
  }
}

/** Null where there is nothing to change. */
function without(document: Json, renaming: Renaming) {
  const renamed = jsonWithout(document, renaming);
  return renamed === null || JSON.stringify(renamed) === JSON.stringify(document) ? null : renamed;
}
