import { statements } from '@/lib/store/connection/database';
import { JsonCell } from '@/lib/store/dialect';
import { inChunks } from '@/lib/store/save/in-chunks';
import { among } from '@/lib/store/sql/among';
import { inPlace } from '@/lib/store/sql/in-place';
import { insertRows, type Cell } from '@/lib/store/sql/insert-rows';
import type { Statements } from '@/lib/store/sql/statements';
import { storedSide } from '@/lib/store/sql/side';
import type { HeightRecord, ShopId, VerdictRecord } from '@/lib/store/types';

const ROUND_COLUMNS = [
  ...['roundId', 'shopId', 'fitId', 'roundVersion', 'at', 'decidable', 'why', 'pZeroMisset', 'maxGauge'],
  'document',
];
const ROUND_UPDATE = inPlace('roundId', ROUND_COLUMNS.slice(2));
const HEIGHT_COLUMNS = [
  ...['setupId', 'dimensionId', 'roundId', 'deviation', 'pNeither', 'pGauge', 'pBody', 'pBoth'],
  ...['misset', 'body', 'signature'],
];

/** A verdict with the version of the round's readings that it was made from. */
export type DatedVerdict = VerdictRecord & { version: number };

interface RoundRow {
  id: number;
  job: string;
  stage: string;
  attempt: number;
  startedAt: Date;
}

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
  const jobs = [...new Set(verdicts.map(({ job }) => job))];
  const rounds = await inChunks(
    jobs,
    (numbers) => queries.$queryRaw<RoundRow[]>`
        SELECT r."id", j."number" AS "job", r."stage", r."attempt", r."startedAt"
        FROM "Round" r JOIN "Job" j ON j."id" = r."jobId"
        WHERE j."shopId" = ${shop} AND j."number" ${among(numbers)}`,
  );
  const found = new Map(rounds.map((row) => [JSON.stringify([row.job, row.stage, row.attempt]), row]));
  const stored = verdicts.flatMap((verdict): [DatedVerdict, RoundRow][] => {
    const row = found.get(JSON.stringify([verdict.job, verdict.stage, verdict.attempt]));
    return row === undefined ? [] : [[verdict, row]];
  });
  await insertRows(
    queries,
    'RoundVerdict',
    ROUND_COLUMNS,
    stored.map(([verdict, row]) => roundCells(shop, fit, verdict, row)),
    ROUND_UPDATE,
  );
  await replaceHeights(queries, stored);
}

function roundCells(shop: ShopId, fit: number, verdict: DatedVerdict, row: RoundRow): Cell[] {
  const { version, decidable, why, pZeroMisset, heights, document } = verdict;
  const maxGauge = heights.reduce((most, { p }) => Math.max(most, p.gauge + p.both), 0);
  return [
    ...[row.id, shop, fit, version, row.startedAt, decidable, why, pZeroMisset, maxGauge],
    new JsonCell(document),
  ];
}

async function replaceHeights(
  queries: Statements,
  stored: readonly [DatedVerdict, RoundRow][],
): Promise<void> {
  const ids = stored.map(([, row]) => row.id);
  const places = await inChunks(
    ids,
    (roundIds) => queries.$queryRaw<
      { roundId: number; setup: string; setupId: number; dimensionId: number; point: string; side: string }[]
    >`
      SELECT s."roundId", s."label" AS "setup", o."setupId", o."dimensionId", d."point", d."side"
      FROM "Setup" s JOIN "Observation" o ON o."setupId" = s."id" JOIN "Dimension" d ON d."id" = o."dimensionId"
      WHERE d."quantity" = 'height' AND s."roundId" ${among(roundIds)}`,
  );
  const found = new Map(
    places.map((row) => [JSON.stringify([row.roundId, row.setup, row.point, row.side]), row] as const),
  );
  await inChunks(ids, async (roundIds) => {
    await queries.$executeRaw`DELETE FROM "HeightVerdict" WHERE "roundId" ${among(roundIds)}`;
    return [];
  });
  const rows = stored.flatMap(([{ heights }, { id }]) =>
    heights.flatMap((height): Cell[][] => {
      const place = found.get(JSON.stringify([id, height.setup, height.point, storedSide(height.side)]));
      return place === undefined ? [] : [[place.setupId, place.dimensionId, id, ...heightCells(height)]];
    }),
  );
  await insertRows(queries, 'HeightVerdict', HEIGHT_COLUMNS, rows);
}

const heightCells = ({ deviation, p, misset, body, signature }: HeightRecord): Cell[] => [
  ...[deviation, p.neither, p.gauge, p.body, p.both],
  ...[misset, body, signature],
];
