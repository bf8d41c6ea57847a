import type { Cause, Stage } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import { dimensionColumns, dimensionOf } from '@/lib/store/sheets/dimension-row';
import type { Page, SetupQuery, SetupRow, ShopId } from '@/lib/store/types';
import { handIds } from './hand-ids';
import { paging } from './paging';

const select = {
  label: true,
  hungAt: true,
  job: { select: { number: true } },
  round: { select: { stage: true, attempt: true } },
  technician: { select: { code: true } },
  gauge: { select: { tag: true } },
  observations: {
    select: { n: true, deviation: true, ss: true, cause: true, dimension: { select: dimensionColumns } },
    orderBy: [{ takenAt: 'asc' }, { dimensionId: 'asc' }],
  },
} satisfies Prisma.SetupSelect;

/** One page of setups, newest first. */
export async function listSetups(shop: ShopId, query: SetupQuery): Promise<Page<SetupRow>> {
  const { technician, gauge, job, from, to } = query;
  const where: Prisma.SetupWhereInput = {
    shopId: shop,
    ...(await handIds(shop, { technician, gauge })),
    ...(job !== undefined && { job: { number: job } }),
    ...((from !== undefined || to !== undefined) && {
      hungAt: {
        ...(from !== undefined && { gte: new Date(from) }),
        ...(to !== undefined && { lt: new Date(to) }),
      },
    }),
  };
  const [total, rows] = await Promise.all([
    database().setup.count({ where }),
    database().setup.findMany({
      where,
      select,
      orderBy: [{ hungAt: 'desc' }, { id: 'desc' }],
      ...paging(query),
    }),
  ]);
  return { rows: rows.map(setupRow), total };
}

function setupRow(row: Prisma.SetupGetPayload<{ select: typeof select }>): SetupRow {
  return {
    job: row.job.number,
    stage: row.round.stage as Stage,
    attempt: row.round.attempt,
    setup: row.label,
    technician: row.technician.code,
    gauge: row.gauge.tag,
    hungAt: row.hungAt.getTime(),
    observations: row.observations.map(({ n, deviation, ss, cause, dimension }) => ({
      ...dimensionOf(dimension),
      n,
      deviation,
      ss,
      cause: cause as Cause | null,
    })),
  };
}
