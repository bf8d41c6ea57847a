import { SECTIONS, type Stage } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import type { JobFilter, JobQuery, JobRow, JobSort, Page, ShopId } from '@/lib/store/types';
import { excludedByJob } from './excluded-by-job';
import { jobWhere } from './job-where';
import { paging } from './paging';

const select = {
  id: true,
  number: true,
  openedAt: true,
  lastReadAt: true,
  lastStage: true,
  lastAttempt: true,
  roundCount: true,
  setupCount: true,
  readingCount: true,
  sheet: { select: { name: true } },
  hands: {
    select: { technician: { select: { code: true } } },
    orderBy: [{ firstAt: 'asc' }, { technician: { code: 'asc' } }],
  },
  outcome: { select: { right: true, out: true, frontOut: true, centerOut: true, rearOut: true } },
} satisfies Prisma.JobSelect;

type Row = Prisma.JobGetPayload<{ select: typeof select }>;

type Direction = 'asc' | 'desc';

/** What is absent comes before everything that is there, in both databases. */
const nothingLeast = (direction: Direction) =>
  ({ sort: direction, nulls: direction === 'asc' ? 'first' : 'last' }) as const;

const SORTS: Record<JobSort, (direction: Direction) => Prisma.JobOrderByWithRelationInput[]> = {
  job: (direction) => [{ number: direction }],
  sheet: (direction) => [{ sheet: { name: nothingLeast(direction) } }, { openedAt: 'desc' }],
  stage: (direction) => [{ lastStage: direction }, { lastAttempt: direction }, { openedAt: 'desc' }],
  technician: (direction) => [{ technician: { code: direction } }, { openedAt: 'desc' }],
  opened: (direction) => [{ openedAt: direction }],
  outcome: (direction) => [{ outcome: { right: nothingLeast(direction) } }, { openedAt: 'desc' }],
};

export function countJobs(shop: ShopId, filter: JobFilter = {}): Promise<number> {
  return database().job.count({ where: jobWhere(shop, filter) });
}

/** One page of the jobs that a query shows, newest first where it names no order. */
export async function listJobs(shop: ShopId, query: JobQuery): Promise<Page<JobRow>> {
  const where = jobWhere(shop, query);
  const order = SORTS[query.sort ?? 'opened'](query.direction ?? (query.sort === undefined ? 'desc' : 'asc'));
  const [total, rows] = await Promise.all([
    database().job.count({ where }),
    database().job.findMany({ where, select, orderBy: [...order, { id: 'desc' }], ...paging(query) }),
  ]);
  return { rows: await withExcluded(rows), total };
}

/** What the list shows of one job. */
export async function getJobRow(shop: ShopId, job: string): Promise<JobRow | null> {
  const row = await database().job.findUnique({
    where: { shopId_number: { shopId: shop, number: job } },
    select,
  });
  return row && ((await withExcluded([row]))[0] ?? null);
}

async function withExcluded(rows: readonly Row[]): Promise<JobRow[]> {
  const excluded = await excludedByJob(rows.map(({ id }) => id));
  return rows.map((row) => jobRow(row, excluded.get(row.id) ?? 0));
}

function jobRow(row: Row, excluded: number): JobRow {
  const { outcome } = row;
  const right = outcome?.right ?? null;
  const out = { front: outcome?.frontOut, center: outcome?.centerOut, rear: outcome?.rearOut };
  return {
    job: row.number,
    sheet: row.sheet.name,
    stage: row.lastStage as Stage,
    attempt: row.lastAttempt,
    openedAt: row.openedAt.getTime(),
    lastReadAt: row.lastReadAt.getTime(),
    technicians: row.hands.map((hand) => hand.technician.code),
    rounds: row.roundCount,
    setups: row.setupCount,
    readings: row.readingCount,
    excluded,
    outcome: right === null ? 'unknown' : right ? 'right' : 'wrong',
    out: right === null ? null : (outcome?.out ?? null),
    sectionsOut: SECTIONS.filter((section) => (out[section] ?? 0) > 0),
  };
}
