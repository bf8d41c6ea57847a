import type { Cause, GaugeKind, Observation, Quantity, Section, Stage } from '@/lib/measure';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { sideOf, type StoredSide } from '@/lib/store/sql/side';

/** One collapsed observation with the setup, round and job that it belongs to. */
export interface ObservationRow {
  job: string;
  sheet: string | null;
  stage: Stage;
  attempt: number;
  clearance: number | null;
  setup: string;
  hungAt: Date;
  technician: string;
  gauge: string;
  gaugeKind: GaugeKind | null;
  quantity: Quantity;
  point: string;
  side: StoredSide;
  section: Section | null;
  station: number | null;
  zero: boolean;
  nominal: number;
  tolerance: number;
  n: number;
  deviation: number;
  ss: number;
  cause: Cause | null;
  takenAt: Date;
}

/** Everything of `ObservationRow`, to be followed by WHERE and ORDER BY. One statement: one moment of the data. */
export const SELECT_OBSERVATIONS = Prisma.sql`
  SELECT j."number" AS "job", h."name" AS "sheet", r."stage", r."attempt", r."clearance", s."label" AS "setup",
    s."hungAt", p."code" AS "technician", g."tag" AS "gauge", g."kind" AS "gaugeKind", d."quantity", d."point",
    d."side", d."section", d."station", d."zero", d."nominal", d."tolerance", o."n", o."deviation", o."ss",
    o."cause", o."takenAt"
  FROM "Job" j
    JOIN "Sheet" h ON h."id" = j."sheetId"
    JOIN "Setup" s ON s."jobId" = j."id"
    JOIN "Round" r ON r."id" = s."roundId"
    JOIN "Person" p ON p."id" = s."technicianId"
    JOIN "Gauge" g ON g."id" = s."gaugeId"
    JOIN "Observation" o ON o."setupId" = s."id"
    JOIN "Dimension" d ON d."id" = o."dimensionId"`;

export const observationOf = (row: ObservationRow): Observation => ({
  quantity: row.quantity,
  point: row.point,
  side: sideOf(row.side),
  section: row.section,
  station: row.station,
  zero: row.zero,
  nominal: row.nominal,
  tolerance: row.tolerance,
  n: row.n,
  deviation: row.deviation,
  ss: row.ss,
  cause: row.cause,
  takenAt: row.takenAt.getTime(),
});
