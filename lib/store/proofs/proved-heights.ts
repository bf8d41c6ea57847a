import type { Cause, Stage } from '@/lib/measure';
import { askAgain } from '@/lib/store/sql/ask';
import type { ProvedBy, ShopId, StoredProof } from '@/lib/store/types';

const MOST = 5_000;

/** The newest heights that were checked again, what had been said of them and what was proved; at most 5,000. */
export async function provedHeights(shop: ShopId): Promise<readonly StoredProof[]> {
  const rows = await askAgain<ProofRow>`
    SELECT j."number" AS "job", r."stage", r."attempt", h."month", h."pNeither", h."pGauge", h."pBody", h."pBoth",
      h."proved", h."by", p."ahead"
    FROM "RoundProof" p JOIN "HeightProof" h ON h."roundId" = p."roundId"
      JOIN "Round" r ON r."id" = p."roundId" JOIN "Job" j ON j."id" = r."jobId"
    WHERE p."shopId" = ${shop}
    ORDER BY r."startedAt" DESC, r."id" DESC, h."setupId", h."dimensionId" LIMIT ${MOST}`;
  const known = told.get(rows);
  if (known !== undefined) return known;
  const proofs = rows.map(({ pNeither, pGauge, pBody, pBoth, ahead, ...row }) => ({
    ...row,
    ahead: Boolean(ahead),
    p: { neither: pNeither, gauge: pGauge, body: pBody, both: pBoth },
  }));
  told.set(rows, proofs);
  return proofs;
}

/** While nothing was written, the rows are the same object as before, and so is what is told of them. */
const told = new WeakMap<readonly unknown[], readonly StoredProof[]>();

interface ProofRow {
  job: string;
  stage: Stage;
  attempt: number;
  month: string;
  pNeither: number;
  pGauge: number;
  pBody: number;
  pBoth: number;
  proved: Cause | null;
  by: ProvedBy;
  ahead: boolean | number;
}
