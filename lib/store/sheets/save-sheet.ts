import { transaction, type Queries } from '@/lib/store/connection/database';
import { storedSide } from '@/lib/store/sql/side';
import type { Sheet, ShopId } from '@/lib/store/types';

/**
 * Adds a sheet, or adds to one that is known: points are added or changed, dimensions only added.
 * @throws RangeError where a dimension is known with another value: readings were taken against it.
 */
export async function saveSheet(shop: ShopId, sheet: Sheet): Promise<void> {
  await transaction(async (queries) => {
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
  for (const dimension of dimensions) {
    const { quantity, point, section, station, zero, nominal, tolerance } = dimension;
    const side = storedSide(dimension.side);
    const known = await queries.dimension.findUnique({
      where: { sheetId_quantity_point_side: { sheetId, quantity, point, side } },
    });
    if (known === null) {
      await queries.dimension.create({
        data: { sheetId, quantity, point, side, section, station, zero, nominal, tolerance },
      });
    } else if (known.nominal !== nominal || known.tolerance !== tolerance || known.station !== station) {
      throw new RangeError(
        `Sheet ${name} states ${quantity} ${point}${side} already, as ${known.nominal} ± ${known.tolerance} mm.`,
      );
    }
  }
}
