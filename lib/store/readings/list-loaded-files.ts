import { database } from '@/lib/store/connection/database';
import type { LoadedFile, ShopId } from '@/lib/store/types';

/** The files that readings came from, newest first. */
export async function listLoadedFiles(shop: ShopId): Promise<LoadedFile[]> {
  const rows = await database().loadedFile.findMany({
    where: { shopId: shop },
    select: { name: true, sha256: true, lines: true, added: true, alreadyThere: true, loadedAt: true },
    // By the order of storing, whatever the clock said.
    orderBy: { id: 'desc' },
  });
  return rows.map((row) => ({ ...row, loadedAt: row.loadedAt.getTime() }));
}
