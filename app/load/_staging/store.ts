import type { Fault } from '@/lib/measure';
import { saveTable, StoreConflict, type SaveSummary, type Shop } from '@/lib/store';
import { firstOf, readStagedFile, type Tell } from './check';
import { READ_FIRST } from './read-first';
import type { LoadedFile, StagedFile } from './staged-file';

/** Stores a staged file, all or nothing. What contradicts the shop's records comes back as faults. */
export async function storeStagedFile(
  id: string,
  staged: StagedFile,
  shop: Shop,
  tell: Tell,
): Promise<StagedFile> {
  const { readings, faults, summary } = await readStagedFile(id, staged, shop, (share) =>
    tell(share * READ_FIRST),
  );
  if (readings === null) return { ...staged, checked: { summary, ...firstOf(faults) } };
  const { name, sha256 } = staged;
  try {
    const saved = await saveTable(
      shop.id,
      readings,
      { name, sha256, lines: summary.lines },
      { person: staged.by, via: 'page' },
      (share) => tell(READ_FIRST + share * (1 - READ_FIRST)),
    );
    return { ...staged, result: resultOf(saved) };
  } catch (error) {
    if (!(error instanceof StoreConflict)) throw error;
    return { ...staged, checked: { summary, ...firstOf(conflictFaults(error)) } };
  }
}

/** What was stored, as it is kept for the page. */
export const resultOf = ({ jobs, ...saved }: SaveSummary): LoadedFile => ({ ...saved, jobs: jobs.length });

/** What contradicts the shop's records, as faults of the file. */
export const conflictFaults = ({ conflicts }: StoreConflict): Fault[] =>
  conflicts.map(({ line, column, reason }) => ({ line, column, message: reason, value: null }));
