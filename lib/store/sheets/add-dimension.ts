import type { Dimension } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import { storedSide } from '@/lib/store/sql/side';
import { namedValue } from './dimension-row';

export async function addDimension(queries: Queries, sheetId: number, dimension: Dimension): Promise<void> {
  const { quantity, point, section, station, zero, nominal, tolerance } = dimension;
  const key = { sheetId, quantity, point, side: storedSide(dimension.side), named: namedValue(dimension) };
  await queries.dimension.create({ data: { ...key, section, station, zero, nominal, tolerance } });
}
