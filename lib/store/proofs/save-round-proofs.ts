import { statements } from '@/lib/store/connection/database';
import { monthOf } from '@/lib/measure/month-of';
import { inPlace } from '@/lib/store/sql/in-place';
import { insertRows } from '@/lib/store/sql/insert-rows';
import { withRounds } from '@/lib/store/sql/named-rounds';
import { replaceHeights, type HeightTable } from '@/lib/store/sql/replace-heights';
import type { Statements } from '@/lib/store/sql/statements';
import { timeZoneOf } from '@/lib/store/shop/time-zone-of';
import type { HeightProofRecord, RoundProofRecord, ShopId } from '@/lib/store/types';

const ROUND_COLUMNS = ['roundId', 'shopId', 'roundVersion', 'format', 'ahead'];
const ROUND_UPDATE = inPlace('roundId', ROUND_COLUMNS.slice(2));
const heightsIn = (timeZone: string): HeightTable<HeightProofRecord> => ({
  name: 'HeightProof',
  columns: ['month', 'pNeither', 'pGauge', 'pBody', 'pBoth', 'proved', 'by'],
  cells: ({ p, proved, by }, { hungAt }) => [
    monthOf(hungAt.getTime(), timeZone),
    ...[p.neither, p.gauge, p.body, p.both],
    ...[proved, by],
  ],
});

/**
 * Keeps what was foretold and proved in these rounds, in place of their earlier rows.
 * Rounds and heights that the shop does not have are left out.
 */
export async function saveRoundProofs(
  shop: ShopId,
  format: number,
  proofs: readonly RoundProofRecord[],
): Promise<void> {
  if (proofs.length === 0) return;
  await statements(shop, (within) => writeRoundProofs(within, shop, format, proofs));
}

/** The same within a transaction. */
export async function writeRoundProofs(
  queries: Statements,
  shop: ShopId,
  format: number,
  proofs: readonly RoundProofRecord[],
): Promise<void> {
  const timeZone = await timeZoneOf(queries, shop);
  const kept = await withRounds(queries, shop, proofs);
  await insertRows(
    queries,
    'RoundProof',
    ROUND_COLUMNS,
    kept.map(([{ version, ahead }, { id }]) => [id, shop, version, format, ahead]),
    ROUND_UPDATE,
  );
  await replaceHeights(
    queries,
    heightsIn(timeZone),
    kept.map(([{ heights }, { id }]) => ({ id, heights })),
  );
}
