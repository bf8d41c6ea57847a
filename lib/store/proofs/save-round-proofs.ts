import { statements } from '@/lib/store/connection/database';
import { monthOf } from '@/lib/measure/month-of';
import { inChunks } from '@/lib/store/save/in-chunks';
import { among } from '@/lib/store/sql/among';
import { inPlace } from '@/lib/store/sql/in-place';
import { insertRows, type Cell } from '@/lib/store/sql/insert-rows';
import type { Statements } from '@/lib/store/sql/statements';
import { timeZoneOf } from '@/lib/store/shop/time-zone-of';
import { storedSide } from '@/lib/store/sql/side';
import type { HeightProofRecord, RoundProofRecord, ShopId } from '@/lib/store/types';

const ROUND_COLUMNS = ['roundId', 'shopId', 'roundVersion', 'format', 'ahead'];
const ROUND_UPDATE = inPlace('roundId', ROUND_COLUMNS.slice(2));
const HEIGHT_COLUMNS = [
  ...['setupId', 'dimensionId', 'roundId', 'month', 'pNeither', 'pGauge', 'pBody', 'pBoth'],
  ...['proved', 'by'],
];

interface RoundRow {
  id: number;
  job: string;
  stage: string;
  attempt: number;
}

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
  const rounds = await inChunks(
    [...new Set(proofs.map(({ job }) => job))],
    (numbers) => queries.$queryRaw<RoundRow[]>`
        SELECT r."id", j."number" AS "job", r."stage", r."attempt"
        FROM "Round" r JOIN "Job" j ON j."id" = r."jobId"
        WHERE j."shopId" = ${shop} AND j."number" ${among(numbers)}`,
  );
  const ids = new Map(rounds.map((row) => [JSON.stringify([row.job, row.stage, row.attempt]), row.id]));
  const kept = proofs.flatMap((proof): [RoundProofRecord, number][] => {
    const id = ids.get(JSON.stringify([proof.job, proof.stage, proof.attempt]));
    return id === undefined ? [] : [[proof, id]];
  });
  await insertRows(
    queries,
    'RoundProof',
    ROUND_COLUMNS,
    kept.map(([{ version, ahead }, id]) => [id, shop, version, format, ahead]),
    ROUND_UPDATE,
  );
  await replaceHeights(queries, kept, timeZone);
}

interface Place {
  roundId: number;
  setup: string;
  setupId: number;
  dimensionId: number;
  point: string;
  side: string;
  hungAt: Date;
}

async function replaceHeights(
  queries: Statements,
  kept: readonly [RoundProofRecord, number][],
  timeZone: string,
): Promise<void> {
  const places = await inChunks(
    kept.flatMap(([{ heights }, id]) => (heights.length === 0 ? [] : [id])),
    (ids) => queries.$queryRaw<Place[]>`
      SELECT s."roundId", s."label" AS "setup", s."hungAt", o."setupId", o."dimensionId", d."point", d."side"
      FROM "Setup" s JOIN "Observation" o ON o."setupId" = s."id" JOIN "Dimension" d ON d."id" = o."dimensionId"
      WHERE d."quantity" = 'height' AND s."roundId" ${among(ids)}`,
  );
  const found = new Map(
    places.map((row) => [JSON.stringify([row.roundId, row.setup, row.point, row.side]), row]),
  );
  await inChunks(
    kept.map(([, id]) => id),
    async (ids) => {
      await queries.$executeRaw`DELETE FROM "HeightProof" WHERE "roundId" ${among(ids)}`;
      return [];
    },
  );
  const rows = kept.flatMap(([{ heights }, id]) =>
    heights.flatMap((height): Cell[][] => {
      const place = found.get(JSON.stringify([id, height.setup, height.point, storedSide(height.side)]));
      if (place === undefined) return [];
      const month = monthOf(place.hungAt.getTime(), timeZone);
      return [[place.setupId, place.dimensionId, id, month, ...heightCells(height)]];
    }),
  );
  await insertRows(queries, 'HeightProof', HEIGHT_COLUMNS, rows);
}

const heightCells = ({ p, proved, by }: HeightProofRecord): Cell[] => [
  ...[p.neither, p.gauge, p.body, p.both],
  ...[proved, by],
];
