import type { Queries } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { changeAppendOnly } from '@/lib/store/sql/change-append-only';
import type { ShopId } from '@/lib/store/types';
import { entriesWithout } from './entries-without';
import { lookedFor, textWithout, type Renaming } from './without-person';

/** Where people write freely, table and column. */
const WRITTEN = [
  ...[['RecheckOutcome', 'note'] as const, ['GaugeVerification', 'note'] as const],
  ...[['LoadedFile', 'name'] as const, ['ApiToken', 'name'] as const],
  ...[['Trial', 'name'] as const, ['ScheduledReport', 'failed'] as const],
];
const WRITTEN_FOR_GOOD = [
  ...[['Reading', 'reason'] as const, ['Trace', 'reason'] as const],
  ...[['SheetRevision', 'reason'] as const, ['BayEntry', 'conflict'] as const],
];

interface Change {
  table: string;
  column: string;
  from: string;
  to: string;
}

/** Takes a person's names out of what people of the shop wrote in notes, reasons and names of files. */
export async function renameInTexts(queries: Queries, shop: ShopId, renaming: Renaming): Promise<void> {
  for (const change of await changesIn(queries, shop, WRITTEN, renaming)) await make(queries, shop, change);
  const forGood = await changesIn(queries, shop, WRITTEN_FOR_GOOD, renaming);
  const entries = await entriesWithout(queries, shop, renaming);
  if (forGood.length + entries.length === 0) return;
  await changeAppendOnly(queries, async () => {
    for (const change of forGood) await make(queries, shop, change);
    for (const { id, document } of entries)
      await queries.bayEntry.update({ where: { id }, data: { document } });
  });
}

async function changesIn(
  queries: Queries,
  shop: ShopId,
  places: readonly (readonly [table: string, column: string])[],
  renaming: Renaming,
): Promise<Change[]> {
  const changes: Change[] = [];
  const words = lookedFor(renaming);
  if (words.length === 0) return [];
  for (const [table, column] of places) {
    const [from, text] = [Prisma.raw(`"${table}"`), Prisma.raw(`"${column}"`)];
    const holds = words.map((word) => Prisma.sql`replace(${text}, ${word}, '') <> ${text}`);
    const rows = await queries.$queryRaw<{ text: string }[]>`
      SELECT DISTINCT ${text} AS "text" FROM ${from} WHERE "shopId" = ${shop} AND (${Prisma.join(holds, ' OR ')})`;
    for (const row of rows) {
      const to = textWithout(row.text, renaming);
      if (to !== row.text) changes.push({ table, column, from: row.text, to });
    }
  }
  return changes;
}

async function make(queries: Queries, shop: ShopId, { table, column, from, to }: Change): Promise<void> {
  const [where, text] = [Prisma.raw(`"${table}"`), Prisma.raw(`"${column}"`)];
  await queries.$executeRaw`UPDATE ${where} SET ${text} = ${to} WHERE "shopId" = ${shop} AND ${text} = ${from}`;
}
