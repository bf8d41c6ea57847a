import type { Cause, GaugeKind, Quantity, Reading, Section, Stage } from '@/lib/measure';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { sideOf, type StoredSide } from '@/lib/store/sql/side';

export interface ReadingRow {
  /** Null where it was entered by hand. */
  line: number | null;
  job: string;
  sheet: string | null;
  stage: Stage;
  attempt: number;
  takenAt: Date;
  technician: string;
  gauge: string;
  gaugeKind: GaugeKind | null;
  setup: string;
  quantity: Quantity;
  point: string;
  side: StoredSide;
  section: Section | null;
  station: number | null;
  zero: boolean;
  nominal: number;
  tolerance: number;
  clearance: number | null;
  repeat: number;
  value: number;
  cause: Cause | null;
}

/** Readings as they count: each by its last revision, without those that are excluded. Line 0: entered by hand. */
export const SELECT_READINGS = Prisma.sql`
  SELECT q."line", j."number" AS "job", h."name" AS "sheet", r."stage", r."attempt", q."takenAt",
    p."code" AS "technician", g."tag" AS "gauge", g."kind" AS "gaugeKind", s."label" AS "setup", d."quantity",
    d."point", d."side", d."section", d."station", d."zero", d."nominal", d."tolerance", r."clearance",
    q."repeat", q."value", o."cause"
  FROM "Job" j
    JOIN "Sheet" h ON h."id" = j."sheetId"
    JOIN "Setup" s ON s."jobId" = j."id"
    JOIN "Round" r ON r."id" = s."roundId"
    JOIN "Person" p ON p."id" = s."technicianId"
    JOIN "Gauge" g ON g."id" = s."gaugeId"
    JOIN "Observation" o ON o."setupId" = s."id"
    JOIN "Dimension" d ON d."id" = o."dimensionId"
    JOIN "Reading" q ON q."setupId" = o."setupId" AND q."dimensionId" = o."dimensionId" AND NOT q."excluded"
      AND NOT EXISTS (
        SELECT 1 FROM "Reading" l WHERE l."setupId" = q."setupId" AND l."dimensionId" = q."dimensionId"
          AND l."repeat" = q."repeat" AND l."revision" > q."revision")`;

export const READING_ORDER = Prisma.sql`ORDER BY j."openedAt", j."number", q."takenAt", q."line", s."label", q."repeat"`;

export const readingOf = (row: ReadingRow): Reading => ({
  ...row,
  line: row.line ?? 0,
  takenAt: row.takenAt.getTime(),
  side: sideOf(row.side),
  clearance: row.quantity === 'height' ? (row.clearance ?? 0) : 0,
});
