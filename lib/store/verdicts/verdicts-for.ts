import type { Cause, Side, Stage } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { handIds } from '@/lib/store/jobs/hand-ids';
import { askAgain } from '@/lib/store/sql/ask';
import { jobsOf } from '@/lib/store/sql/named-jobs';
import type { Json, ShopId, StoredHeight, StoredVerdict, VerdictFilter } from '@/lib/store/types';

const USUAL = 200;
const MOST = 5_000;

/** Verdicts on rounds, newest round first. */
export async function verdictsFor(shop: ShopId, filter: VerdictFilter): Promise<readonly StoredVerdict[]> {
  const rows = await askAgain<VerdictRow>`
    SELECT j."number" AS "job", r."stage", r."attempt", v."decidable", v."why", v."pZeroMisset", v."document",
      v."fitId", v."at"
    FROM "RoundVerdict" v JOIN "Round" r ON r."id" = v."roundId" JOIN "Job" j ON j."id" = r."jobId"
    WHERE ${ofShop(shop, filter, Prisma.sql`v."shopId"`)} ${roundConditions(filter)} ${hands(filter)}
    ORDER BY v."at" DESC, v."roundId" DESC LIMIT ${limited(filter)}`;
  return verdictsOf(rows);
}

const verdictsOf = onceFor((rows: readonly VerdictRow[]): readonly StoredVerdict[] =>
  frozen(rows.map(({ fitId, at, ...verdict }) => ({ fit: fitId, at: at.getTime(), ...verdict }))),
);

interface VerdictRow {
  job: string;
  stage: Stage;
  attempt: number;
  decidable: boolean;
  why: string | null;
  pZeroMisset: number;
  document: Json;
  fitId: number;
  at: Date;
}

/** Heights with their verdict, newest first; `minGauge` then asks for each height, the rest as in `verdictsFor`. */
export async function heightsFor(shop: ShopId, filter: VerdictFilter): Promise<readonly StoredHeight[]> {
  const { technician, gauge, minGauge, ...ofRound } = filter;
  const { technicianId, gaugeId } = await handIds(shop, { technician, gauge });
  const rows = await askAgain<HeightRow>`
    SELECT j."number" AS "job", r."stage", r."attempt", s."label" AS "setup", p."code" AS "technician",
      g."tag" AS "gauge", s."hungAt", d."point", d."side", d."zero", o."cause", h."deviation", h."pNeither",
      h."pGauge", h."pBody", h."pBoth", h."misset", h."body", h."signature"
    FROM "Setup" s
      JOIN "HeightVerdict" h ON h."setupId" = s."id"
      JOIN "RoundVerdict" v ON v."roundId" = h."roundId"
      JOIN "Round" r ON r."id" = v."roundId"
      JOIN "Job" j ON j."id" = r."jobId"
      JOIN "Person" p ON p."id" = s."technicianId"
      JOIN "Gauge" g ON g."id" = s."gaugeId"
      JOIN "Observation" o ON o."setupId" = h."setupId" AND o."dimensionId" = h."dimensionId"
      JOIN "Dimension" d ON d."id" = h."dimensionId"
    WHERE ${ofShop(shop, filter, Prisma.sql`s."shopId"`)} AND o."n" > 0 ${roundConditions(ofRound)}
      ${technicianId === undefined ? Prisma.empty : Prisma.sql`AND s."technicianId" = ${technicianId}`}
      ${gaugeId === undefined ? Prisma.empty : Prisma.sql`AND s."gaugeId" = ${gaugeId}`}
      ${minGauge === undefined ? Prisma.empty : Prisma.sql`AND h."pGauge" + h."pBoth" >= ${minGauge}`}
    ORDER BY s."hungAt" DESC, s."id" DESC, h."dimensionId" LIMIT ${limited(filter)}`;
  return heightsOf(rows);
}

const heightsOf = onceFor((rows: readonly HeightRow[]): readonly StoredHeight[] =>
  frozen(
    rows.map(({ hungAt, pNeither, pGauge, pBody, pBoth, ...height }) => ({
      hungAt: hungAt.getTime(),
      p: { neither: pNeither, gauge: pGauge, body: pBody, both: pBoth },
      ...height,
    })),
  ),
);

interface HeightRow {
  job: string;
  stage: Stage;
  attempt: number;
  setup: string;
  technician: string;
  gauge: string;
  hungAt: Date;
  point: string;
  side: Side;
  zero: boolean;
  cause: Cause | null;
  deviation: number;
  pNeither: number;
  pGauge: number;
  pBody: number;
  pBoth: number;
  misset: number;
  body: number;
  signature: string | null;
}

/** Of this shop, or of jobs of it. @param own the column that says which shop */
function ofShop(shop: ShopId, { job, jobs }: VerdictFilter, own: Prisma.Sql): Prisma.Sql {
  const named = [...(job === undefined ? [] : [[job]]), ...(jobs === undefined ? [] : [jobs])];
  if (named.length === 0) return Prisma.sql`${own} = ${shop}`;
  return Prisma.join(
    named.map((numbers) => jobsOf(shop, numbers)),
    ' AND ',
  );
}

function roundConditions({ from, to, last, decidable, minGauge }: VerdictFilter): Prisma.Sql {
  const conditions = [
    from === undefined ? Prisma.empty : Prisma.sql`AND v."at" >= ${new Date(from)}`,
    to === undefined ? Prisma.empty : Prisma.sql`AND v."at" < ${new Date(to)}`,
    last === true
      ? Prisma.sql`AND r."stage" = j."lastStage" AND r."attempt" = j."lastAttempt"`
      : Prisma.empty,
    decidable === undefined ? Prisma.empty : Prisma.sql`AND v."decidable" = ${decidable}`,
    minGauge === undefined ? Prisma.empty : Prisma.sql`AND v."maxGauge" >= ${minGauge}`,
  ];
  return Prisma.join(conditions, ' ');
}

/** Rounds in which this technician or this gauge hung something. */
function hands({ technician, gauge }: VerdictFilter): Prisma.Sql {
  if (technician === undefined && gauge === undefined) return Prisma.empty;
  return Prisma.sql`AND EXISTS (
    SELECT 1 FROM "Setup" s JOIN "Person" p ON p."id" = s."technicianId" JOIN "Gauge" g ON g."id" = s."gaugeId"
    WHERE s."roundId" = r."id"
      ${technician === undefined ? Prisma.empty : Prisma.sql`AND p."code" = ${technician}`}
      ${gauge === undefined ? Prisma.empty : Prisma.sql`AND g."tag" = ${gauge}`})`;
}

const limited = ({ limit }: VerdictFilter) => Math.min(MOST, Math.max(1, Math.trunc(limit ?? USUAL)));
