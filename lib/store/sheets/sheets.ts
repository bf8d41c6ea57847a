import type { Dimension, Section } from '@/lib/measure';
import { database } from '@/lib/store/connection/database';
import { sideOf, type StoredSide } from '@/lib/store/sql/side';
import type { Sheet, SheetRow, ShopId } from '@/lib/store/types';
import { dimensionColumns, dimensionOf } from './dimension-row';

/** The named sheets, by name. */
export async function listSheets(shop: ShopId): Promise<SheetRow[]> {
  const rows = await database().sheet.findMany({
    where: { shopId: shop, name: { not: null } },
    select: { name: true, _count: { select: { dimensions: true, jobs: true } } },
    orderBy: { name: 'asc' },
  });
  return rows.map(({ name, _count }) => ({
    name: name ?? '',
    dimensions: _count.dimensions,
    jobs: _count.jobs,
  }));
}

export async function getSheet(shop: ShopId, name: string): Promise<Sheet | null> {
  const row = await database().sheet.findUnique({
    where: { shopId_name: { shopId: shop, name } },
    select: {
      dimensions: {
        select: dimensionColumns,
        orderBy: [{ quantity: 'asc' }, { point: 'asc' }, { side: 'asc' }, { nominal: 'asc' }],
      },
      points: { orderBy: [{ station: { sort: 'asc', nulls: 'first' } }, { letter: 'asc' }, { side: 'asc' }] },
    },
  });
  if (row === null) return null;
  const points = row.points.map(({ letter, side, description, section, station, zero, halfWidth }) => ({
    letter,
    side: sideOf(side as StoredSide),
    description,
    section: section as Section | null,
    station,
    zero,
    halfWidth,
  }));
  return { name, dimensions: row.dimensions.map(dimensionOf), points };
}

/** Named sheet → its dimensions: what a measurement file may leave out. */
export async function sheetBook(shop: ShopId): Promise<Map<string, Dimension[]>> {
  const rows = await database().sheet.findMany({
    where: { shopId: shop, name: { not: null } },
    select: { name: true, dimensions: { select: dimensionColumns } },
  });
  return new Map(rows.map((row) => [row.name ?? '', row.dimensions.map(dimensionOf)]));
}
