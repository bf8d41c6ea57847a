import type { Queries } from '@/lib/store/connection/database';
import { dialect, type Dialect } from '@/lib/store/dialect';
import { APPEND_ONLY } from '@/prisma/checks.mjs';

/**
 * Does what append-only tables refuse otherwise, within a transaction: only for putting a backup in place of
 * everything, and for taking a removed person's name out of what others wrote.
 */
export async function changeAppendOnly(
  queries: Queries,
  work: () => Promise<void>,
  on: Dialect = dialect(),
): Promise<void> {
  const closes: (() => Promise<void>)[] = [];
  for (const table of APPEND_ONLY) closes.push(await on.openUp(queries, table));
  // Where the work fails, the transaction's end brings the triggers back.
  await work();
  for (const close of closes) await close();
}
