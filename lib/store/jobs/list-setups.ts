import type { Cause, Stage } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { dimensionOf, type DimensionRow } from '@/lib/store/sheets/dimension-row';
import { among } from '@/lib/store/sql/among';
import { askAgain } from '@/lib/store/sql/ask';
import type { Page, SetupQuery, SetupRow, ShopId } from '@/lib/store/types';
import { paging } from './paging';
import { setupsThat } from './setups-that';

interface Row {
  id: number;
  label: string;
  hungAt: Date;
  job: string;
  stage: Stage;
  attempt: number;
  technician: string;
  gauge: string;
}

interface ObservedRow extends DimensionRow {
  setupId: number;
  n: number;
  excluded: number;
  deviation: number;
  ss: number;
  cause: Cause | null;
}

/** One page of setups, newest first. */
export async function listSetups(shop: ShopId, query: SetupQuery): Promise<Page<SetupRow>> {
  const those = await setupsThat(shop, query);
  const { skip, take } = paging(query);
  const [[count], rows] = await Promise.all([
    askAgain<{ setups: number | bigint }>`SELECT count(*) AS "setups" FROM "Setup" s WHERE ${those}`,
    askAgain<Row>`
      SELECT s."id", s."label", s."hungAt", j."number" AS "job", r."stage", r."attempt", p."code" AS "technician",
        g."tag" AS "gauge"
      FROM (SELECT * FROM "Setup" s WHERE ${those} ORDER BY s."hungAt" DESC, s."id" DESC LIMIT ${take} OFFSET ${skip}) s
        JOIN "Job" j ON j."id" = s."jobId" JOIN "Round" r ON r."id" = s."roundId"
        JOIN "Person" p ON p."id" = s."technicianId" JOIN "Gauge" g ON g."id" = s."gaugeId"
      ORDER BY s."hungAt" DESC, s."id" DESC`,
  ]);
  const observed = await observedIn(rows.map(({ id }) => id));
  return { rows: setupRows(rows, observed), total: Number(count?.setups ?? 0) };
}

const setupRows = onceFor((rows: readonly Row[], observed: readonly ObservedRow[]): readonly SetupRow[] => {
  const bySetup = new Map<number, ObservedRow[]>(rows.map(({ id }) => [id, []]));
  for (const one of observed) bySetup.get(one.setupId)?.push(one);
  return frozen(rows.map((row) => setupRow(row, bySetup.get(row.id) ?? [])));
});

/** What was read in these setups, in that order. */
const observedIn = (setups: readonly number[]): Promise<readonly ObservedRow[]> =>
  askAgain<ObservedRow>`
    SELECT o."setupId", o."n", o."excluded", o."deviation", o."ss", o."cause", d."quantity", d."point", d."side",
      d."section", d."station", d."zero", d."nominal", d."tolerance"
    FROM "Observation" o JOIN "Dimension" d ON d."id" = o."dimensionId"
    WHERE o."setupId" ${among(setups)} ORDER BY o."takenAt", o."dimensionId"`;

function setupRow(row: Row, observed: readonly ObservedRow[]): SetupRow {
  return {
    job: row.job,
    stage: row.stage,
    attempt: row.attempt,
    setup: row.label,
    technician: row.technician,
    gauge: row.gauge,
    hungAt: row.hungAt.getTime(),
    excluded: observed.reduce((sum, { excluded }) => sum + excluded, 0),
    observations: observed
      .filter(({ n }) => n > 0)
      .map((one) => ({
        n: one.n,
        excluded: one.excluded,
        deviation: one.deviation,
        ss: one.ss,
        cause: one.cause,
        ...dimensionOf(one),
      })),
  };
}
