import type { Quantity } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { sideOf, type StoredSide } from '@/lib/store/sql/side';
import { askAgain } from '@/lib/store/sql/ask';
import type { ReadingRevision, RevisionQuery, ShopId } from '@/lib/store/types';

interface Row extends Omit<ReadingRevision, 'side' | 'takenAt' | 'enteredAt' | 'excluded'> {
  quantity: Quantity;
  side: StoredSide;
  takenAt: Date;
  enteredAt: Date | null;
  excluded: boolean | number;
}

/**
 * Every revision of the readings of a job: what was entered, what it was changed to, when, by whom and why.
 * By setup, dimension and repeat, first revision first.
 */
export async function readingHistory(
  shop: ShopId,
  { job, setup, changed }: RevisionQuery,
): Promise<readonly ReadingRevision[]> {
  const within = [
    setup === undefined ? Prisma.empty : Prisma.sql`AND s."label" = ${setup}`,
    changed === true
      ? Prisma.sql`AND EXISTS (
          SELECT 1 FROM "Reading" l WHERE l."setupId" = q."setupId" AND l."dimensionId" = q."dimensionId"
            AND l."repeat" = q."repeat" AND l."revision" > 1)`
      : Prisma.empty,
  ];
  const rows = await askAgain<Row>`
    SELECT j."number" AS "job", s."label" AS "setup", d."quantity", d."point", d."side", d."nominal", q."repeat",
      q."revision", q."value", q."takenAt", q."excluded", q."reason", p."code" AS "by", q."enteredAt",
      f."name" AS "file", q."line"
    FROM "Job" j
      JOIN "Setup" s ON s."jobId" = j."id"
      JOIN "Reading" q ON q."setupId" = s."id"
      JOIN "Dimension" d ON d."id" = q."dimensionId"
      LEFT JOIN "LoadedFile" f ON f."id" = q."fileId"
      LEFT JOIN "Person" p ON p."id" = q."personId"
    WHERE j."shopId" = ${shop} AND j."number" = ${job} ${Prisma.join(within, ' ')}
    ORDER BY s."hungAt", s."label", q."dimensionId", q."repeat", q."revision"`;
  return revisionsOf(rows);
}

const revisionsOf = onceFor((rows: readonly Row[]): readonly ReadingRevision[] =>
  frozen(
    rows.map(({ side, takenAt, enteredAt, excluded, ...row }) => ({
      ...row,
      side: sideOf(side),
      takenAt: takenAt.getTime(),
      enteredAt: enteredAt?.getTime() ?? null,
      excluded: Boolean(excluded),
    })),
  ),
);
