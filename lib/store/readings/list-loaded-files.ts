import { askAgain } from '@/lib/store/sql/ask';
import type { LoadedFile, ShopId } from '@/lib/store/types';

/** The files that readings came from, newest first. */
export async function listLoadedFiles(shop: ShopId): Promise<LoadedFile[]> {
  // By the order of storing, whatever the clock said.
  const rows = await askAgain<Omit<LoadedFile, 'loadedAt'> & { loadedAt: Date }>`
    SELECT "name", "sha256", "lines", "added", "alreadyThere", "loadedAt"
    FROM "LoadedFile" WHERE "shopId" = ${shop} ORDER BY "id" DESC`;
  return rows.map((row) => ({ ...row, loadedAt: row.loadedAt.getTime() }));
}
