import { dimensionKey, type Dimension } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import type { Sheet, SheetRecord, SheetRow, ShopId } from '@/lib/store/types';
import { contentColumns, contentOf } from './content-row';
import { dimensionColumns, dimensionOf } from './dimension-row';

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

/** Named sheet → its dimensions: what a measurement file may leave out. */
export async function sheetBook(shop: ShopId): Promise<Map<string, Dimension[]>> {
  const rows = await database().sheet.findMany({
    where: { shopId: shop, name: { not: null } },
    select: { name: true, dimensions: { select: dimensionColumns } },
  });
  return new Map(rows.map((row) => [row.name ?? '', row.dimensions.map(dimensionOf)]));
}
