import { statements } from '@/lib/store/connection/database';
import { JsonCell } from '@/lib/store/dialect';
import { among } from '@/lib/store/sql/among';
import { inPlace } from '@/lib/store/sql/in-place';
import { insertRows } from '@/lib/store/sql/insert-rows';
import { jobIds } from '@/lib/store/sql/job-ids';
import type { Statements } from '@/lib/store/sql/statements';
import type { Json, ShopId } from '@/lib/store/types';
import { writeFitAnswers } from '@/lib/store/verdicts/write-fit-answers';

const COLUMNS = ['jobId', 'shopId', 'fitId', 'jobVersion', 'madeBy', 'document'];
const UPDATE = inPlace('jobId', COLUMNS.slice(2));

/** What one job adds, with the version of its readings; null where it has none any more that count. */
export interface NewJobShare {
  job: string;
  version: number;
  document: Json;
}

/**
 * Keeps what jobs add to the shop's answers by a fit, in place of what they added before; nothing where the fit is gone.
 * @param outdated questions whose answers do not hold any more with it.
 */
export async function saveJobShares(
  shop: ShopId,
  fit: number,
  madeBy: string,
  shares: readonly NewJobShare[],
  outdated: readonly string[] = [],
): Promise<void> {
  if (shares.length === 0) return;
  await statements(shop, async (within) => {
    await writeJobShares(within, shop, fit, madeBy, shares);
    await writeFitAnswers(within, shop, fit, { texts: new Map(), gone: outdated });
  });
}

/** The same within a transaction. */
export async function writeJobShares(
  within: Statements,
  shop: ShopId,
  fit: number,
  madeBy: string,
  shares: readonly NewJobShare[],
): Promise<void> {
  // Somebody may have been removed meanwhile, and the fit with them.
  const there = await within.$queryRaw<unknown[]>`
      SELECT 1 AS "one" FROM "ShopFit" WHERE "shopId" = ${shop} AND "id" = ${fit}`;
  if (there.length === 0) return;
  const ids = await jobIds(
    within,
    shop,
    shares.map(({ job }) => job),
  );
  const kept = shares.flatMap((share): [NewJobShare, number][] => {
    const id = ids.get(share.job);
    return id === undefined ? [] : [[share, id]];
  });
  const gone = kept.flatMap(([{ document }, id]) => (document === null ? [id] : []));
  if (gone.length > 0) await within.$executeRaw`DELETE FROM "JobShare" WHERE "jobId" ${among(gone)}`;
  await insertRows(
    within,
    'JobShare',
    COLUMNS,
    kept.flatMap(([{ version, document }, id]) =>
      document === null ? [] : [[id, shop, fit, version, madeBy, new JsonCell(document)]],
    ),
    UPDATE,
  );
}
