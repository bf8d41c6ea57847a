import { isDeepStrictEqual } from 'node:util';
import { dimensionKey, dimensionName, type Dimension } from '@/lib/measure';
import { transaction, type Queries } from '@/lib/store/connection/database';
import { storedSide } from '@/lib/store/sql/side';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, Sheet, ShopId } from '@/lib/store/types';
import { addDimension } from './add-dimension';
import { dimensionColumns, dimensionOf } from './dimension-row';
import { LengthValues } from './length-values';

/**
 * Adds a sheet, or adds to one that is known: points are added or changed, dimensions only added.
 * @throws RangeError where a dimension is known with another value: readings were taken against it.
 */
export async function saveSheet(shop: ShopId, sheet: Sheet, actor: Actor): Promise<void> {
  await transaction(shop, async (queries) => {
    const where = { shopId_name: { shopId: shop, name: sheet.name } };
    const known = await queries.sheet.findUnique({ where });
    const { id } = known ?? (await queries.sheet.create({ data: { shopId: shop, name: sheet.name } }));
    const points = await savePoints(queries, id, sheet);
    const dimensions = await addDimensions(queries, id, sheet);
    if (known !== null && points + dimensions === 0) return;
    await writeTrace(queries, shop, actor, {
      action: known === null ? 'added' : 'changed',
      kind: 'sheet',
      subject: subjectOf.sheet(sheet.name),
      after: { points, dimensions },
    });
  });
}

/** @returns how many points were added or changed. */
async function savePoints(queries: Queries, sheetId: number, { points }: Sheet): Promise<number> {
  const rows = await queries.sheetPoint.findMany({ where: { sheetId } });
  const known = new Map(
    rows.map(({ id: _, sheetId: __, letter, side, ...rest }) => [JSON.stringify([letter, side]), rest]),
  );
  let changed = 0;
  for (const { letter, side: named, ...rest } of points) {
    const side = storedSide(named);
    if (isDeepStrictEqual(known.get(JSON.stringify([letter, side])), rest)) continue;
    changed += 1;
    await queries.sheetPoint.upsert({
      where: { sheetId_letter_side: { sheetId, letter, side } },
      create: { sheetId, letter, side, ...rest },
      update: rest,
    });
  }
  return changed;
}

/** @returns how many dimensions were added. */
async function addDimensions(
  queries: Queries,
  sheetId: number,
  { name, dimensions }: Sheet,
): Promise<number> {
  const rows = await queries.dimension.findMany({ where: { sheetId }, select: dimensionColumns });
  const stored = rows.map(dimensionOf);
  const known = new Map(stored.map((dimension) => [dimensionKey(dimension), dimension]));
  const lengths = new LengthValues([...stored, ...dimensions]);
  let added = 0;
  for (const dimension of dimensions) {
    const key = dimensionKey(dimension);
    const there = known.get(key);
    const values = dimension.quantity === 'length' ? lengths.contradicted(dimension) : null;
    if (values !== null) throw statedAs(name, dimension, `${values.join(' or ')} mm`);
    if (there === undefined) {
      await addDimension(queries, sheetId, dimension);
      known.set(key, dimension);
      added += 1;
    } else if (SHEET_VALUES.some((value) => there[value] !== dimension[value])) {
      throw statedAs(name, there, `${there.nominal} ± ${there.tolerance} mm`);
    }
  }
  return added;
}

const SHEET_VALUES = ['nominal', 'tolerance', 'station'] as const;

const statedAs = (sheet: string, dimension: Dimension, as: string) =>
  new RangeError(`Sheet ${sheet} states ${dimensionName(dimension)} already, as ${as}.`);
