import { SECTIONS, type Stage } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { among } from '@/lib/store/sql/among';
import { ask, askAgain } from '@/lib/store/sql/ask';
import type { JobFilter, JobQuery, JobRow, JobSort, Page, ShopId } from '@/lib/store/types';
import { countsByJob, excludedInJobs, type ExcludedRow } from './excluded-by-job';
import { jobsThat } from './jobs-that';
import { paging } from './paging';

const SELECT_JOBS = Prisma.sql`
  SELECT j."id", j."number", j."openedAt", j."lastReadAt", j."lastStage", j."lastAttempt", j."roundCount",
    j."setupCount", j."readingCount", h."name" AS "sheet", o."right", o."out", o."frontOut", o."centerOut", o."rearOut"
  FROM "Job" j JOIN "Sheet" h ON h."id" = j."sheetId" LEFT JOIN "JobOutcome" o ON o."jobId" = j."id"`;

interface Row {
  id: number;
  number: string;
  openedAt: Date;
  lastReadAt: Date;
  lastStage: Stage;
  lastAttempt: number;
  roundCount: number;
  setupCount: number;
  readingCount: number;
  sheet: string | null;
  right: boolean | null;
  out: number | null;
  frontOut: number | null;
  centerOut: number | null;
  rearOut: number | null;
}

type Direction = 'asc' | 'desc';

const DIRECTIONS = { asc: Prisma.sql`ASC`, desc: Prisma.sql`DESC` };
/** What is absent comes before everything that is there, in both databases. */
const NOTHING_LEAST = { asc: Prisma.sql`ASC NULLS FIRST`, desc: Prisma.sql`DESC NULLS LAST` };
const NEWEST = Prisma.sql`j."openedAt" DESC`;
const FIRST_HAND = Prisma.sql`(SELECT p."code" FROM "Person" p WHERE p."id" = j."technicianId")`;

const SORTS: Record<JobSort, (direction: Direction) => Prisma.Sql> = {
  job: (direction) => Prisma.sql`j."number" ${DIRECTIONS[direction]}`,
  sheet: (direction) => Prisma.sql`h."name" ${NOTHING_LEAST[direction]}, ${NEWEST}`,
  stage: (direction) =>
    Prisma.sql`j."lastStage" ${DIRECTIONS[direction]}, j."lastAttempt" ${DIRECTIONS[direction]}, ${NEWEST}`,
  technician: (direction) => Prisma.sql`${FIRST_HAND} ${DIRECTIONS[direction]}, ${NEWEST}`,
  opened: (direction) => Prisma.sql`j."openedAt" ${DIRECTIONS[direction]}`,
  outcome: (direction) => Prisma.sql`o."right" ${NOTHING_LEAST[direction]}, ${NEWEST}`,
};

export async function countJobs(shop: ShopId, filter: JobFilter = {}): Promise<number> {
  const [row] = await askAgain<{ jobs: number | bigint }>`
    SELECT count(*) AS "jobs" FROM "Job" j WHERE ${jobsThat(shop, filter)}`;
  return Number(row?.jobs ?? 0);
}

/** One page of the jobs that a query shows, newest first where it names no order. */
export async function listJobs(shop: ShopId, query: JobQuery): Promise<Page<JobRow>> {
  const order = SORTS[query.sort ?? 'opened'](query.direction ?? (query.sort === undefined ? 'desc' : 'asc'));
  const { skip, take } = paging(query);
  const [total, rows] = await Promise.all([
    countJobs(shop, query),
    askAgain<Row>`${SELECT_JOBS} WHERE ${jobsThat(shop, query)} ORDER BY ${order}, j."id" DESC LIMIT ${take} OFFSET ${skip}`,
  ]);
  return { rows: await jobRows(rows), total };
}

/** What the list shows of one job. */
export async function getJobRow(shop: ShopId, job: string): Promise<JobRow | null> {
  const rows = await ask<Row>`${SELECT_JOBS} WHERE j."shopId" = ${shop} AND j."number" = ${job}`;
  return (await jobRows(rows))[0] ?? null;
}

async function jobRows(rows: readonly Row[]): Promise<readonly JobRow[]> {
  const ids = rows.map(({ id }) => id);
  const [hands, excluded] = await Promise.all([handsInJobs(ids), excludedInJobs(ids)]);
  return rowsWith(rows, hands, excluded);
}

const rowsWith = onceFor(
  (rows: readonly Row[], hands: readonly HandRow[], excluded: readonly ExcludedRow[]): readonly JobRow[] => {
    const [byJob, left] = [codesByJob(hands), countsByJob(excluded)];
    return frozen(rows.map((row) => jobRow(row, byJob.get(row.id) ?? [], left.get(row.id) ?? 0)));
  },
);

interface HandRow {
  jobId: number;
  code: string;
}

/** Who hung a gauge in these jobs, in order of their first. */
const handsInJobs = (jobs: readonly number[]): Promise<readonly HandRow[]> =>
  askAgain<HandRow>`
    SELECT t."jobId", p."code" FROM "JobTechnician" t JOIN "Person" p ON p."id" = t."technicianId"
    WHERE t."jobId" ${among(jobs)} ORDER BY t."firstAt", p."code"`;

function codesByJob(rows: readonly HandRow[]): Map<number, string[]> {
  const codes = new Map<number, string[]>();
  for (const { jobId, code } of rows) codes.set(jobId, [...(codes.get(jobId) ?? []), code]);
  return codes;
}

function jobRow(row: Row, technicians: string[], excluded: number): JobRow {
  const { right, out } = row;
  const outOf = { front: row.frontOut, center: row.centerOut, rear: row.rearOut };
  return {
    job: row.number,
    sheet: row.sheet,
    stage: row.lastStage,
    attempt: row.lastAttempt,
    openedAt: row.openedAt.getTime(),
    lastReadAt: row.lastReadAt.getTime(),
    technicians,
    rounds: row.roundCount,
    setups: row.setupCount,
    readings: row.readingCount,
    excluded,
    outcome: right === null ? 'unknown' : right ? 'right' : 'wrong',
    out: right === null ? null : out,
    sectionsOut: SECTIONS.filter((section) => (outOf[section] ?? 0) > 0),
  };
}
