import { frozen, onceFor } from '@/lib/memory';
import { askAgain } from '@/lib/store/sql/ask';
import type { SheetRevision, ShopId } from '@/lib/store/types';
import { parseRevision } from './revision-document';

interface Row {
  revision: number;
  at: Date;
  reason: string | null;
  document: unknown;
  by: string;
}

/** Every revision of a sheet, the first first; none where it was never entered or corrected by hand. */
export async function sheetHistory(shop: ShopId, name: string): Promise<readonly SheetRevision[]> {
  const rows = await askAgain<Row>`
    SELECT r."revision", r."at", r."reason", r."document", p."code" AS "by"
    FROM "Sheet" h JOIN "SheetRevision" r ON r."sheetId" = h."id" JOIN "Person" p ON p."id" = r."personId"
    WHERE h."shopId" = ${shop} AND h."name" = ${name} ORDER BY r."revision"`;
  return revisionsOf(rows);
}

const revisionsOf = onceFor((rows: readonly Row[]): readonly SheetRevision[] =>
  frozen(
    rows.map(({ revision, at, reason, document, by }) => {
      const { origin, copiedFrom, points, dimensions } = parseRevision(document);
      return { revision, at: at.getTime(), by, reason, origin, copiedFrom, content: { points, dimensions } };
    }),
  ),
);
