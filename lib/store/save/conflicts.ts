import type { Conflict } from '@/lib/store/types';

/** A batch that contradicts what is stored. Nothing of it was kept. */
export class StoreConflict extends Error {
  readonly conflicts: readonly Conflict[];

  constructor(conflicts: readonly Conflict[]) {
    const [first] = conflicts;
    const place = first === undefined ? '' : `Line ${first.line}, column ${first.column}: ${first.reason}`;
    const more = conflicts.length > 1 ? ` (and ${conflicts.length - 1} more)` : '';
    super(`${place}${more} Nothing was stored.`);
    this.name = 'StoreConflict';
    this.conflicts = conflicts;
  }
}
