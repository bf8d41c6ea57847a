import type { Cause, Stage } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import { dimensionColumns, dimensionOf } from '@/lib/store/sheets/dimension-row';
import type { Page, SetupQuery, SetupRow, ShopId } from '@/lib/store/types';
import { paging } from './paging';
import { setupWhere } from './setup-where';

const select = {
  label: true,
  hungAt: true,
  job: { select: { number: true } },
  round: { select: { stage: true, attempt: true } },
  technician: { select: { code: true } },
  gauge: { select: { tag: true } },
  observations: {
    select: {
      ...{ n: true, excluded: true, deviation: true, ss: true, cause: true },
      dimension: { select: dimensionColumns },
    },
    orderBy: [{ takenAt: 'asc' }, { dimensionId: 'asc' }],
  },
} satisfies Prisma.SetupSelect;

/** One page of setups, newest first. */
export async function listSetups(shop: ShopId, query: SetupQuery): Promise<Page<SetupRow>> {
  const where = await setupWhere(shop, query);
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
    excluded: row.observations.reduce((sum, { excluded }) => sum + excluded, 0),
    observations: row.observations
      .filter(({ n }) => n > 0)
      .map(({ cause, dimension, ...values }) => ({
        ...dimensionOf(dimension),
        ...values,
        cause: cause as Cause | null,
      })),
  };
}
