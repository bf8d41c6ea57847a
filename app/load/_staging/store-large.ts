import { sheetBook, StoreConflict, type Shop } from '@/lib/store';
import { loadFile } from '@/lib/store/reader';
import { firstOf, type Tell } from './check';
import { READ_FIRST } from './read-first';
import type { StagedFile } from './staged-file';
import { bytesPath } from './staging';
import { conflictFaults, resultOf } from './store';

/**
 * Stores a staged file that was checked, as `storeStagedFile` does, on two threads, and while it is being read where it can
 * be. For a process of its own alone: what a page imports becomes part of what is served.
 */
export async function storeLargeFile(
  id: string,
  staged: StagedFile,
  shop: Shop,
  tell: Tell,
): Promise<StagedFile> {
  const { name, bytes } = staged;
  const book = await sheetBook(shop.id);
  const file = { path: bytesPath(id), name, bytes, timeZone: shop.timeZone, book };
  try {
    const { saved, faults, summary } = await loadFile(
      shop.id,
      file,
      { person: staged.by, via: 'page' },
      {
        read: (share) => tell(share * READ_FIRST),
        stored: (share) => tell(READ_FIRST + share * (1 - READ_FIRST)),
      },
    );
    if (saved === null) return { ...staged, checked: { summary, ...firstOf(faults) } };
    return { ...staged, result: resultOf(saved) };
  } catch (error) {
    if (!(error instanceof StoreConflict) || staged.checked === null) throw error;
    return { ...staged, checked: { ...staged.checked, ...firstOf(conflictFaults(error)) } };
  }
}
