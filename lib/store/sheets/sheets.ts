import { dimensionKey, type Dimension } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { among } from '@/lib/store/sql/among';
import { ask } from '@/lib/store/sql/ask';
import type { Sheet, SheetRecord, SheetRow, ShopId } from '@/lib/store/types';
import { contentColumns, contentOf } from './content-row';
import { dimensionColumns, dimensionOf, type DimensionRow } from './dimension-row';

/** The named sheets, by name. */
export async function listSheets(shop: ShopId): Promise<SheetRow[]> {
  const rows = await database().sheet.findMany({
    where: { shopId: shop, name: { not: null } },
    select: {
      ...{ name: true, revision: true, retiredAt: true },
      _count: { select: { points: true, dimensions: true, jobs: true } },
    },
    orderBy: { name: 'asc' },
  });
  return rows.map(({ name, revision, retiredAt, _count }) => ({
    name: name ?? '',
    points: _count.points,
    dimensions: _count.dimensions,
    jobs: _count.jobs,
    revision,
    retiredAt: retiredAt?.getTime() ?? null,
  }));
}

/** Null where the shop has no sheet of this name. */
export async function getSheet(shop: ShopId, name: string): Promise<Sheet | null> {
  const row = await database().sheet.findUnique({
    where: { shopId_name: { shopId: shop, name } },
    select: contentColumns,
  });
  return row === null ? null : { name, ...contentOf(row) };
}

/** A sheet with how it stands; null where the shop has none of this name. */
export async function openSheet(shop: ShopId, name: string): Promise<SheetRecord | null> {
  const row = await database().sheet.findUnique({
    where: { shopId_name: { shopId: shop, name } },
    select: {
      ...contentColumns,
      ...{ id: true, revision: true, retiredAt: true },
      _count: { select: { jobs: true } },
    },
  });
  if (row === null) return null;
  const { id, revision, retiredAt, _count } = row;
  const read = await database().dimension.findMany({
    where: { sheetId: id, observations: { some: {} } },
    select: dimensionColumns,
  });
  return {
    name,
    ...contentOf(row),
    ...{ revision, retiredAt: retiredAt?.getTime() ?? null, jobs: _count.jobs },
    read: read.map((one) => dimensionKey(dimensionOf(one))).sort(),
  };
}

/** Named sheet → its dimensions: what a measurement file may leave out. @param only the one sheet that is wanted */
export async function sheetBook(shop: ShopId, only?: string): Promise<Map<string, Dimension[]>> {
  const named = only === undefined ? Prisma.empty : Prisma.sql`AND h."name" = ${only}`;
  const sheets = await ask<{ id: number; name: string }>`
    SELECT h."id", h."name" FROM "Sheet" h WHERE h."shopId" = ${shop} AND h."name" IS NOT NULL ${named}`;
  const rows = await ask<DimensionRow & { sheetId: number }>`
    SELECT d."sheetId", d."quantity", d."point", d."side", d."section", d."station", d."zero", d."nominal",
      d."tolerance"
    FROM "Dimension" d WHERE d."sheetId" ${among(sheets.map(({ id }) => id))} ORDER BY d."id"`;
  const book = new Map<number, Dimension[]>(sheets.map(({ id }) => [id, []]));
  for (const row of rows) book.get(row.sheetId)?.push(dimensionOf(row));
  return new Map(sheets.map(({ id, name }) => [name, book.get(id) ?? []]));
}
