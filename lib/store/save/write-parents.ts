import { dimensionKey } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import { dimensionColumns, dimensionOf, namedValue } from '@/lib/store/sheets/dimension-row';
import { insertRows } from '@/lib/store/sql/insert-rows';
import { storedSide } from '@/lib/store/sql/side';
import type { ShopId } from '@/lib/store/types';
import type { Batch, BatchSheet } from './batch';
import { inChunks } from './in-chunks';
import type { Known } from './known';

export interface Ids {
  /** By code, tag. */
  people: Map<string, number>;
  gauges: Map<string, number>;
  sheets: Map<BatchSheet, number>;
  /** By sheet, then `dimensionKey`. */
  dimensions: Map<BatchSheet, Map<string, number>>;
}

/** Stores the people, gauges, sheets and dimensions that the batch is the first to name. */
export async function writeParents(queries: Queries, shop: ShopId, batch: Batch, known: Known): Promise<Ids> {
  const people = await writePeople(queries, shop, batch, known);
  const gauges = await writeGauges(queries, shop, batch);
  const sheets = await writeSheets(queries, shop, batch.sheets);
  const dimensions = await writeDimensions(queries, sheets);
  return { people, gauges, sheets, dimensions };
}

export const newPeople = (batch: Batch, known: Known): string[] =>
  [...batch.people].filter((code) => !known.people.has(code)).sort();

export const newGauges = (batch: Batch): string[] =>
  [...batch.gauges.values()]
    .filter((gauge) => gauge.known === null)
    .map((gauge) => gauge.tag)
    .sort();

async function writePeople(queries: Queries, shop: ShopId, batch: Batch, known: Known) {
  const added = newPeople(batch, known);
  if (added.length === 0) return known.people;
  const row = (code: string) => [shop, code, code, 'technician', true];
  await insertRows(queries, 'Person', ['shopId', 'code', 'name', 'role', 'active'], added.map(row));
  const rows = await queries.person.findMany({ where: { shopId: shop }, select: { id: true, code: true } });
  return new Map(rows.map(({ id, code }) => [code, id]));
}

async function writeGauges(queries: Queries, shop: ShopId, batch: Batch) {
  for (const { known, kind } of batch.gauges.values()) {
    if (known !== null && known.kind !== kind)
      await queries.gauge.update({ where: { id: known.id }, data: { kind } });
  }
  const added = [...batch.gauges.values()].filter((gauge) => gauge.known === null);
  if (added.length === 0) return new Map([...batch.gauges].map(([tag, { known }]) => [tag, known?.id ?? 0]));
  await insertRows(
    queries,
    'Gauge',
    ['shopId', 'tag', 'kind'],
    added.map(({ tag, kind }) => [shop, tag, kind]),
  );
  const rows = await queries.gauge.findMany({ where: { shopId: shop }, select: { id: true, tag: true } });
  return new Map(rows.map(({ id, tag }) => [tag, id]));
}

async function writeSheets(queries: Queries, shop: ShopId, sheets: readonly BatchSheet[]) {
  const ids = new Map<BatchSheet, number>();
  const named = new Map<string, BatchSheet>();
  const own: BatchSheet[] = [];
  for (const sheet of sheets) {
    if (sheet.known !== null) ids.set(sheet, sheet.known.id);
    else if (sheet.name === null) own.push(sheet);
    else named.set(sheet.name, sheet);
  }
  const names = [...named.keys(), ...own.map(() => null)];
  if (names.length === 0) return ids;
  await insertRows(
    queries,
    'Sheet',
    ['shopId', 'name'],
    names.map((name) => [shop, name]),
  );
  const rows = await inChunks([...named.keys()], (name) =>
    queries.sheet.findMany({ where: { shopId: shop, name: { in: name } }, select: { id: true, name: true } }),
  );
  for (const { id, name } of rows) {
    const sheet = name === null ? undefined : named.get(name);
    if (sheet !== undefined) ids.set(sheet, id);
  }
  // Nameless sheets are alike as long as they are empty: the newest ones without a job are those just made.
  const nameless = await queries.sheet.findMany({
    where: { shopId: shop, name: null },
    orderBy: { id: 'desc' },
    take: own.length,
    select: { id: true },
  });
  for (const [index, sheet] of own.entries()) ids.set(sheet, nameless[index]?.id ?? 0);
  return ids;
}

/** The columns that a dimension is written with, in this order. */
export const DIMENSION_COLUMNS = [
  'sheetId',
  'quantity',
  'point',
  'side',
  'section',
  'station',
  'zero',
  'nominal',
  'tolerance',
  'named',
];

async function writeDimensions(queries: Queries, sheets: ReadonlyMap<BatchSheet, number>) {
  const rows: Parameters<typeof insertRows>[3][number][] = [];
  const ids = new Map<BatchSheet, Map<string, number>>();
  const incomplete = new Map<number, Map<string, number>>();
  for (const [sheet, sheetId] of sheets) {
    const known = new Map<string, number>();
    ids.set(sheet, known);
    for (const [key, { stated, known: stored }] of sheet.dimensions) {
      if (stored !== null) {
        known.set(key, stored.id);
        if (stored.section === stated.section) continue;
        await queries.dimension.update({ where: { id: stored.id }, data: { section: stated.section } });
        continue;
      }
      const { quantity, point, section, station, zero, nominal, tolerance } = stated;
      const sheetValues = [section, station, zero, nominal, tolerance, namedValue(stated)];
      rows.push([sheetId, quantity, point, storedSide(stated.side), ...sheetValues]);
      incomplete.set(sheetId, known);
    }
  }
  await insertRows(queries, 'Dimension', DIMENSION_COLUMNS, rows);
  const stored = await inChunks([...incomplete.keys()], (sheetId) =>
    queries.dimension.findMany({
      where: { sheetId: { in: sheetId } },
      select: { id: true, sheetId: true, ...dimensionColumns },
    }),
  );
  for (const row of stored) incomplete.get(row.sheetId)?.set(dimensionKey(dimensionOf(row)), row.id);
  return ids;
}
