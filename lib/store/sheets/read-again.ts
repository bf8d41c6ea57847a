import type { Cause, Stage } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import { collapseOne, meanRead, type Place, type StoredValue } from '@/lib/store/save/collapse-one';
import { inputsChanged } from '@/lib/store/shop/get-shop';
import { among } from '@/lib/store/sql/among';
import { insertRows, type Cell } from '@/lib/store/sql/insert-rows';
import type { ShopId } from '@/lib/store/types';
import { dimensionOf, type DimensionRow } from './dimension-row';

interface ReadingRow extends DimensionRow {
  setupId: number;
  dimensionId: number;
  jobId: number;
  roundId: number;
  clearance: number | null;
  cause: Cause | null;
  repeat: number;
  value: number;
  takenAt: Date;
}

/**
 * Works out the deviations of dimensions of one sheet anew, to the last bit as if a file had held the values that the
 * sheet states by now, and says that whatever was made from their rounds and jobs is out of date.
 */
export async function readAgain(
  queries: Queries,
  shop: ShopId,
  dimensions: readonly number[],
): Promise<{ observations: number; rounds: number; jobs: number }> {
  if (dimensions.length === 0) return { observations: 0, rounds: 0, jobs: 0 };
  const places = await queries.$queryRaw<{ setupId: number; roundId: number; jobId: number }[]>`
    SELECT DISTINCT s."id" AS "setupId", s."roundId", s."jobId"
    FROM "Observation" o JOIN "Setup" s ON s."id" = o."setupId"
    WHERE o."dimensionId" ${among(dimensions)}`;
  if (places.length === 0) return { observations: 0, rounds: 0, jobs: 0 };
  const observations = await collapseAgain(queries, dimensions);
  const rounds = [...new Set(places.map(({ roundId }) => roundId))];
  const jobs = [...new Set(places.map(({ jobId }) => jobId))];
  await queries.$executeRaw`UPDATE "Round" SET "version" = "version" + 1 WHERE "id" ${among(rounds)}`;
  await queries.$executeRaw`UPDATE "Job" SET "version" = "version" + 1 WHERE "id" ${among(jobs)}`;
  await inputsChanged(queries, shop);
  return { observations, rounds: rounds.length, jobs: jobs.length };
}

const COLUMNS = ['setupId', 'dimensionId', 'n', 'mean', 'deviation', 'ss', 'takenAt', 'cause'];
const UPDATE = `("setupId", "dimensionId") DO UPDATE SET ${['mean', 'deviation', 'ss']
  .map((column) => `"${column}" = excluded."${column}"`)
  .join(', ')}`;

/** One whose readings are all excluded keeps what stands there: nobody reads it. */
async function collapseAgain(queries: Queries, dimensions: readonly number[]): Promise<number> {
  const rows = await queries.$queryRaw<ReadingRow[]>`
    SELECT o."setupId", o."dimensionId", o."cause", r."clearance", d."quantity", d."point", d."side", d."section",
      d."station", d."zero", d."nominal", d."tolerance", q."repeat", q."value", q."takenAt"
    FROM "Observation" o
      JOIN "Dimension" d ON d."id" = o."dimensionId"
      JOIN "Setup" s ON s."id" = o."setupId"
      JOIN "Round" r ON r."id" = s."roundId"
      JOIN "Reading" q ON q."setupId" = o."setupId" AND q."dimensionId" = o."dimensionId" AND NOT q."excluded"
        AND NOT EXISTS (
          SELECT 1 FROM "Reading" l WHERE l."setupId" = q."setupId" AND l."dimensionId" = q."dimensionId"
            AND l."repeat" = q."repeat" AND l."revision" > q."revision")
    WHERE o."dimensionId" ${among(dimensions)}
    ORDER BY o."dimensionId", o."setupId", q."repeat"`;
  const cells: Cell[][] = [];
  for (const readings of byObservation(rows)) {
    const [first] = readings;
    if (first === undefined) continue;
    const form = collapseOne(
      placeOf(first),
      readings.map(({ repeat, value, takenAt }): StoredValue => ({
        repeat,
        value,
        takenAt: takenAt.getTime(),
      })),
    );
    if (form === null) continue;
    const { n, deviation, ss, takenAt } = form;
    const mean = meanRead(form, first.clearance);
    cells.push([first.setupId, first.dimensionId, n, mean, deviation, ss, new Date(takenAt), first.cause]);
  }
  await insertRows(queries, 'Observation', COLUMNS, cells, UPDATE);
  return cells.length;
}

function byObservation(rows: readonly ReadingRow[]): ReadingRow[][] {
  const groups = new Map<string, ReadingRow[]>();
  for (const row of rows) {
    const key = `${row.dimensionId} ${row.setupId}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return [...groups.values()];
}

/** The collapsed form of one observation asks for no more than its dimension and clearance. */
const placeOf = (row: ReadingRow): Place => ({
  job: '',
  sheet: null,
  stage: 'before' satisfies Stage,
  attempt: 1,
  technician: '',
  gauge: '',
  setup: '',
  clearance: row.clearance ?? 0,
  dimension: dimensionOf(row),
});
