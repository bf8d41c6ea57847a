import { database } from '@/lib/store/connection/database';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import { paging } from '@/lib/store/jobs/paging';
import type { Actor, Page, ShopId, TraceQuery, TraceRow } from '@/lib/store/types';
import { subjectsOfJob } from './subjects';

const person = { select: { code: true } } as const;
const select = {
  ...{ id: true, at: true, via: true, action: true, kind: true, subject: true },
  ...{ before: true, after: true, reason: true, person, concerns: person },
} satisfies Prisma.TraceSelect;

/** One page of what was done in the shop, the latest first, in the order it was kept whatever the clock said. */
export async function listTrace(shop: ShopId, query: TraceQuery): Promise<Page<TraceRow>> {
  const where = traceWhere(shop, query);
  const [total, rows] = await Promise.all([
    database().trace.count({ where }),
    database().trace.findMany({ where, select, orderBy: { id: 'desc' }, ...paging(query) }),
  ]);
  return { rows: rows.map(traceRow), total };
}

function traceWhere(shop: ShopId, { job, person, kind, from, to }: TraceQuery): Prisma.TraceWhereInput {
  const all: Prisma.TraceWhereInput[] = [];
  if (job !== undefined) {
    const { own, from: first, below } = subjectsOfJob(job);
    all.push({ OR: [{ subject: own }, { subject: { gte: first, lt: below } }] });
  }
  if (person !== undefined) all.push({ OR: [{ person: { code: person } }, { concerns: { code: person } }] });
  if (from !== undefined) all.push({ at: { gte: new Date(from) } });
  if (to !== undefined) all.push({ at: { lt: new Date(to) } });
  return { shopId: shop, ...(kind !== undefined && { kind }), AND: all };
}

const traceRow = ({
  person: by,
  concerns,
  at,
  via,
  before,
  after,
  ...row
}: Prisma.TraceGetPayload<{ select: typeof select }>): TraceRow => ({
  ...row,
  at: at.getTime(),
  by: by?.code ?? null,
  // The database's CHECK holds the set of ways.
  via: via as Actor['via'],
  concerns: concerns?.code ?? null,
  before: before as TraceRow['before'],
  after: after as TraceRow['after'],
});
