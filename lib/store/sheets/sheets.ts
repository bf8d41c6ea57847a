import { dimensionKey, type Dimension } from '@/lib/measure';
import type { SheetContent } from '@/lib/measure/sheet';
import { frozen, onceFor } from '@/lib/memory';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { among } from '@/lib/store/sql/among';
import { ask, askAgain } from '@/lib/store/sql/ask';
import type { Sheet, SheetRecord, SheetRow, ShopId } from '@/lib/store/types';
import { contentOf, type PointRow } from './content-row';
import { dimensionOf, type DimensionRow } from './dimension-row';

interface ListedRow {
  name: string;
  revision: number;
  retiredAt: Date | null;
  points: number | bigint;
  dimensions: number | bigint;
  jobs: number | bigint;
}

/** The named sheets, by name. */
export async function listSheets(shop: ShopId): Promise<SheetRow[]> {
  const rows = await askAgain<ListedRow>`
    SELECT h."name", h."revision", h."retiredAt",
      (SELECT count(*) FROM "SheetPoint" p WHERE p."sheetId" = h."id") AS "points",
      (SELECT count(*) FROM "Dimension" d WHERE d."sheetId" = h."id") AS "dimensions",
      (SELECT count(*) FROM "Job" j WHERE j."shopId" = h."shopId" AND j."sheetId" = h."id") AS "jobs"
    FROM "Sheet" h WHERE h."shopId" = ${shop} AND h."name" IS NOT NULL ORDER BY h."name"`;
  return rows.map(({ name, revision, retiredAt, points, dimensions, jobs }) => ({
    name,
    points: Number(points),
    dimensions: Number(dimensions),
    jobs: Number(jobs),
    revision,
    retiredAt: retiredAt?.getTime() ?? null,
  }));
}

/** Null where the shop has no sheet of this name. */
export async function getSheet(shop: ShopId, name: string): Promise<Sheet | null> {
  const row = await standing(shop, name);
  return row === undefined ? null : { name, ...(await contentsOf(row.id)) };
}

/** A sheet with how it stands; null where the shop has none of this name. */
export async function openSheet(shop: ShopId, name: string): Promise<SheetRecord | null> {
  const row = await standing(shop, name);
  if (row === undefined) return null;
  const { id, revision, retiredAt } = row;
  const [content, [used], read] = await Promise.all([
    contentsOf(id),
    askAgain<{ jobs: number | bigint }>`
      SELECT count(*) AS "jobs" FROM "Job" j WHERE j."shopId" = ${shop} AND j."sheetId" = ${id}`,
    askAgain<DimensionRow>`
      SELECT ${DIMENSION} FROM "Dimension" d
      WHERE d."sheetId" = ${id} AND EXISTS (SELECT 1 FROM "Observation" o WHERE o."dimensionId" = d."id")`,
  ]);
  return {
    name,
    ...content,
    revision,
    retiredAt: retiredAt?.getTime() ?? null,
    jobs: Number(used?.jobs ?? 0),
    read: read.map((one) => dimensionKey(dimensionOf(one))).sort(),
  };
}

const standing = async (shop: ShopId, name: string) =>
  (
    await ask<{ id: number; revision: number; retiredAt: Date | null }>`
      SELECT h."id", h."revision", h."retiredAt" FROM "Sheet" h WHERE h."shopId" = ${shop} AND h."name" = ${name}`
  )[0];

const DIMENSION = Prisma.sql`d."quantity", d."point", d."side", d."section", d."station", d."zero", d."nominal",
  d."tolerance"`;

/** In the order of `contentColumns`. */
async function contentsOf(sheet: number): Promise<SheetContent> {
  const [dimensions, points] = await Promise.all([
    askAgain<DimensionRow>`
      SELECT ${DIMENSION} FROM "Dimension" d WHERE d."sheetId" = ${sheet}
      ORDER BY d."quantity", d."point", d."side", d."nominal"`,
    askAgain<PointRow>`
      SELECT p."letter", p."side", p."description", p."feature", p."section", p."station", p."zero", p."halfWidth"
      FROM "SheetPoint" p WHERE p."sheetId" = ${sheet}
      ORDER BY p."station" ASC NULLS FIRST, p."letter", p."side"`,
  ]);
  return contentIn(dimensions, points);
}

const contentIn = onceFor((dimensions: readonly DimensionRow[], points: readonly PointRow[]): SheetContent =>
  frozen(contentOf({ dimensions, points })),
);

/** Named sheet → its dimensions: what a measurement file may leave out. @param only the one sheet that is wanted */
export async function sheetBook(shop: ShopId, only?: string): Promise<Map<string, Dimension[]>> {
  const named = only === undefined ? Prisma.empty : Prisma.sql`AND h."name" = ${only}`;
  const sheets = await ask<{ id: number; name: string }>`
    SELECT h."id", h."name" FROM "Sheet" h WHERE h."shopId" = ${shop} AND h."name" IS NOT NULL ${named}`;
  const rows = await ask<DimensionRow & { sheetId: number }>`
    SELECT d."sheetId", ${DIMENSION}
    FROM "Dimension" d WHERE d."sheetId" ${among(sheets.map(({ id }) => id))} ORDER BY d."id"`;
  const book = new Map<number, Dimension[]>(sheets.map(({ id }) => [id, []]));
  for (const row of rows) book.get(row.sheetId)?.push(dimensionOf(row));
  return new Map(sheets.map(({ id, name }) => [name, book.get(id) ?? []]));
}
