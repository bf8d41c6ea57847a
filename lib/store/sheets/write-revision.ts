import { isDeepStrictEqual } from 'node:util';
import type { SheetContent } from '@/lib/measure/sheet';
import type { Queries } from '@/lib/store/connection/database';
import type { ShopId } from '@/lib/store/types';
import { asJson, parseRevision, type RevisionDocument } from './revision-document';

interface Revision {
  sheetId: number;
  revision: number;
  document: RevisionDocument;
  reason: string | null;
  personId: number;
}

export async function writeRevision(
  queries: Queries,
  shop: ShopId,
  { document, ...rest }: Revision,
): Promise<void> {
  await queries.sheetRevision.create({
    data: { ...rest, shopId: shop, document: asJson(document), at: new Date() },
  });
}

/** What the last revision holds; null where the sheet has none. */
export async function lastRevision(queries: Queries, sheetId: number): Promise<SheetContent | null> {
  const row = await queries.sheetRevision.findFirst({
    where: { sheetId },
    orderBy: { revision: 'desc' },
    select: { document: true },
  });
  return row === null ? null : parseRevision(row.document);
}

/** True where both hold the same points and dimensions, in whatever order. */
export function isSameContent(a: SheetContent, b: SheetContent): boolean {
  const sorted = (rows: readonly object[]) =>
    rows.map((row) => JSON.stringify(Object.entries(row).sort(([x], [y]) => (x < y ? -1 : 1)))).sort();
  return (
    isDeepStrictEqual(sorted(a.points), sorted(b.points)) &&
    isDeepStrictEqual(sorted(a.dimensions), sorted(b.dimensions))
  );
}
