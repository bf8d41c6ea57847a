import { Prisma } from '@/lib/store/generated/sqlite/client';
import { paging } from '@/lib/store/jobs/paging';
import { ask } from '@/lib/store/sql/ask';
import type { Actor, Page, ShopId, TraceQuery, TraceRow } from '@/lib/store/types';
import { subjectsOfJob } from './subjects';

interface Row {
  id: number;
  at: Date;
  via: string;
  action: string;
  kind: string;
  subject: string;
  before: unknown;
  after: unknown;
  reason: string | null;
  by: string | null;
  concerns: string | null;
}

/** One page of what was done in the shop, the latest first, in the order it was kept whatever the clock said. */
export async function listTrace(shop: ShopId, query: TraceQuery): Promise<Page<TraceRow>> {
  const that = traceThat(shop, query);
  const { skip, take } = paging(query);
  const [[counted], rows] = await Promise.all([
    ask<{ total: number | bigint }>`SELECT count(*) AS "total" FROM "Trace" t WHERE ${that}`,
    ask<Row>`
      SELECT t."id", t."at", t."via", t."action", t."kind", t."subject", t."before", t."after", t."reason",
        p."code" AS "by", c."code" AS "concerns"
      FROM "Trace" t LEFT JOIN "Person" p ON p."id" = t."personId" LEFT JOIN "Person" c ON c."id" = t."concernsId"
      WHERE ${that} ORDER BY t."id" DESC LIMIT ${take} OFFSET ${skip}`,
  ]);
  return { rows: rows.map(traceRow), total: Number(counted?.total ?? 0) };
}

function traceThat(shop: ShopId, { job, person, kind, from, to }: TraceQuery): Prisma.Sql {
  const all = [Prisma.sql`t."shopId" = ${shop}`];
  if (kind !== undefined) all.push(Prisma.sql`t."kind" = ${kind}`);
  if (job !== undefined) {
    const { own, from: first, below } = subjectsOfJob(job);
    all.push(Prisma.sql`(t."subject" = ${own} OR (t."subject" >= ${first} AND t."subject" < ${below}))`);
  }
  if (person !== undefined) {
    const row = Prisma.sql`(SELECT p."id" FROM "Person" p WHERE p."shopId" = ${shop} AND p."code" = ${person})`;
    all.push(Prisma.sql`(t."personId" = ${row} OR t."concernsId" = ${row})`);
  }
  if (from !== undefined) all.push(Prisma.sql`t."at" >= ${new Date(from)}`);
  if (to !== undefined) all.push(Prisma.sql`t."at" < ${new Date(to)}`);
  return Prisma.join(all, ' AND ');
}

const traceRow = ({ at, via, before, after, ...row }: Row): TraceRow => ({
  ...row,
  at: at.getTime(),
  // The database's CHECK holds the set of ways.
  via: via as Actor['via'],
  before: before as TraceRow['before'],
  after: after as TraceRow['after'],
});
