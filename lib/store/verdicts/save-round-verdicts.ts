import { statements } from '@/lib/store/connection/database';
import { JsonCell } from '@/lib/store/dialect';
import { inPlace } from '@/lib/store/sql/in-place';
import { insertRows, type Cell } from '@/lib/store/sql/insert-rows';
import { withRounds, type RoundRow } from '@/lib/store/sql/named-rounds';
import { replaceHeights, type HeightTable } from '@/lib/store/sql/replace-heights';
import type { Statements } from '@/lib/store/sql/statements';
import type { HeightRecord, ShopId, VerdictRecord } from '@/lib/store/types';

const ROUND_COLUMNS = [
  ...['roundId', 'shopId', 'fitId', 'roundVersion', 'at', 'decidable', 'why', 'pZeroMisset', 'maxGauge'],
  'document',
];
const ROUND_UPDATE = inPlace('roundId', ROUND_COLUMNS.slice(2));
const HEIGHTS: HeightTable<HeightRecord> = {
  name: 'HeightVerdict',
  columns: ['deviation', 'pNeither', 'pGauge', 'pBody', 'pBoth', 'misset', 'body', 'signature'],
  cells: ({ deviation, p, misset, body, signature }) => [
    ...[deviation, p.neither, p.gauge, p.body, p.both],
    ...[misset, body, signature],
  ],
};

/** A verdict with the version of the round's readings that it was made from. */
export type DatedVerdict = VerdictRecord & { version: number };

/** Keeps verdicts in place of the rounds' earlier ones. Rounds and heights that the shop does not have are left out. */
export async function saveRoundVerdicts(
  shop: ShopId,
  fit: number,
  verdicts: readonly DatedVerdict[],
): Promise<void> {
  if (verdicts.length === 0) return;
  await statements(shop, (within) => writeRoundVerdicts(within, shop, fit, verdicts));
}

/** The same within a transaction. */
export async function writeRoundVerdicts(
  queries: Statements,
  shop: ShopId,
  fit: number,
  verdicts: readonly DatedVerdict[],
): Promise<void> {
  const stored = await withRounds(queries, shop, verdicts);
  await insertRows(
    queries,
    'RoundVerdict',
    ROUND_COLUMNS,
    stored.map(([verdict, row]) => roundCells(shop, fit, verdict, row)),
    ROUND_UPDATE,
  );
  await replaceHeights(
    queries,
    HEIGHTS,
    stored.map(([{ heights }, { id }]) => ({ id, heights })),
  );
}

function roundCells(shop: ShopId, fit: number, verdict: DatedVerdict, row: RoundRow): Cell[] {
  const { version, decidable, why, pZeroMisset, heights, document } = verdict;
  const maxGauge = heights.reduce((most, { p }) => Math.max(most, p.gauge + p.both), 0);
  return [
    ...[row.id, shop, fit, version, row.startedAt, decidable, why, pZeroMisset, maxGauge],
    new JsonCell(document),
  ];
}
