import { dimensionName, type Stage } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Place } from '@/lib/store/save/collapse-one';
import { dimensionOf, type DimensionRow } from '@/lib/store/sheets/dimension-row';
import { storedSide } from '@/lib/store/sql/side';
import type { ReadingPlace, ShopId } from '@/lib/store/types';

interface SetupRow {
  setupId: number;
  jobId: number;
  roundId: number;
  technicianId: number;
  technician: string;
  gauge: string;
  sheet: string | null;
  stage: Stage;
  attempt: number;
  clearance: number | null;
}

/**
 * The observation that a reading belongs to, with every revision of its readings in order.
 * @throws RangeError where the shop has no such setup, or the name stands for no or more than one observation.
 */
export async function findObservation(queries: Queries, shop: ShopId, wanted: ReadingPlace) {
  const { job, setup: label, quantity, point, side, nominal } = wanted;
  const [setup] = await queries.$queryRaw<SetupRow[]>`
    SELECT s."id" AS "setupId", s."jobId", s."roundId", s."technicianId", p."code" AS "technician",
      g."tag" AS "gauge", h."name" AS "sheet", r."stage", r."attempt", r."clearance"
    FROM "Job" j JOIN "Setup" s ON s."jobId" = j."id" JOIN "Round" r ON r."id" = s."roundId"
      JOIN "Sheet" h ON h."id" = j."sheetId" JOIN "Person" p ON p."id" = s."technicianId"
      JOIN "Gauge" g ON g."id" = s."gaugeId"
    WHERE j."shopId" = ${shop} AND j."number" = ${job} AND s."label" = ${label}`;
  if (setup === undefined) throw new RangeError(`Job ${job} has no setup ${label}.`);
  const { setupId } = setup;
  const found = await queries.$queryRaw<(DimensionRow & { dimensionId: number })[]>`
    SELECT o."dimensionId", d."quantity", d."point", d."side", d."section", d."station", d."zero", d."nominal",
      d."tolerance"
    FROM "Observation" o JOIN "Dimension" d ON d."id" = o."dimensionId"
    WHERE o."setupId" = ${setupId} AND d."quantity" = ${quantity} AND d."point" = ${point}
      AND d."side" = ${storedSide(side)}
      ${nominal === undefined ? Prisma.empty : Prisma.sql`AND d."nominal" = ${nominal}`}`;
  const [row] = found;
  const asked = `${quantity} ${point}${side === null ? '' : ` ${side}`}`;
  if (row === undefined) throw new RangeError(`Setup ${label} of job ${job} has no reading of ${asked}.`);
  if (found.length > 1)
    throw new RangeError(`The sheet has two values of ${asked}. Say which one is meant by its value.`);
  const dimension = dimensionOf(row);
  const { dimensionId } = row;
  const readings = await queries.reading.findMany({
    where: { setupId, dimensionId },
    orderBy: [{ repeat: 'asc' }, { revision: 'asc' }],
  });
  const { technician, gauge, sheet, stage, attempt, clearance } = setup;
  const place: Place = {
    job,
    sheet,
    stage,
    attempt,
    technician,
    gauge,
    setup: label,
    dimension,
    clearance: clearance ?? 0,
  };
  return { setup, dimensionId, readings, place, name: dimensionName(dimension) };
}

export type FoundObservation = Awaited<ReturnType<typeof findObservation>>;
