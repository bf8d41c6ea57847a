import { dimensionKey, dimensionName, type Dimension } from '@/lib/measure';
import { transaction, type Queries } from '@/lib/store/connection/database';
import { storedSide } from '@/lib/store/sql/side';
import type { Sheet, ShopId } from '@/lib/store/types';
import { dimensionColumns, dimensionOf, namedValue } from './dimension-row';
import { LengthValues } from './length-values';

/**
 * Adds a sheet, or adds to one that is known: points are added or changed, dimensions only added.
 * @throws RangeError where a dimension is known with another value: readings were taken against it.
 */
export async function saveSheet(shop: ShopId, sheet: Sheet): Promise<void> {
  await transaction(shop, async (queries) => {
    const { id } = await queries.sheet.upsert({
      where: { shopId_name: { shopId: shop, name: sheet.name } },
      create: { shopId: shop, name: sheet.name },
      update: {},
    });
    await savePoints(queries, id, sheet);
    await addDimensions(queries, id, sheet);
  });
}

async function savePoints(queries: Queries, sheetId: number, { points }: Sheet): Promise<void> {
  for (const { letter, side: named, ...rest } of points) {
    const side = storedSide(named);
    await queries.sheetPoint.upsert({
      where: { sheetId_letter_side: { sheetId, letter, side } },
      create: { sheetId, letter, side, ...rest },
      update: rest,
    });
  }
}

async function addDimensions(queries: Queries, sheetId: number, { name, dimensions }: Sheet): Promise<void> {
  const rows = await queries.dimension.findMany({ where: { sheetId }, select: dimensionColumns });
  const stored = rows.map(dimensionOf);
  const known = new Map(stored.map((dimension) => [dimensionKey(dimension), dimension]));
  const lengths = new LengthValues([...stored, ...dimensions]);
  for (const dimension of dimensions) {
    const key = dimensionKey(dimension);
    const there = known.get(key);
    const values = dimension.quantity === 'length' ? lengths.contradicted(dimension) : null;
    if (values !== null) throw statedAs(name, dimension, `${values.join(' or ')} mm`);
    if (there === undefined) {
      await addDimension(queries, sheetId, dimension);
      known.set(key, dimension);
    } else if (SHEET_VALUES.some((value) => there[value] !== dimension[value])) {
      throw statedAs(name, there, `${there.nominal} ± ${there.tolerance} mm`);
    }
  }
}

async function addDimension(queries: Queries, sheetId: number, dimension: Dimension): Promise<void> {
  const { quantity, point, section, station, zero, nominal, tolerance } = dimension;
  const key = { sheetId, quantity, point, side: storedSide(dimension.side), named: namedValue(dimension) };
  await queries.dimension.create({ data: { ...key, section, station, zero, nominal, tolerance } });
}

const SHEET_VALUES = ['nominal', 'tolerance', 'station'] as const;

const statedAs = (sheet: string, dimension: Dimension, as: string) =>
  new RangeError(`Sheet ${sheet} states ${dimensionName(dimension)} already, as ${as}.`);
