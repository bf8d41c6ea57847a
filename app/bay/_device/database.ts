import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { BayHead, Entry, KeptEntry } from '@/lib/bay';

/** A round as this device knows it. */
export interface RoundRow {
  head: BayHead;
  /** What this device calls itself in this round. */
  device: string;
  /** Of its last entry; 0 before the first. */
  sequence: number;
  /** Id of the last entry that the shop has told. */
  since: number;
}

/** Everything stands under the person who entered it, `shop.code`: who signs in next has nothing to do with it. */
type OfRound = [who: string, round: number];
type OfEntry = [...OfRound, number];

interface Stores extends DBSchema {
  rounds: { key: OfRound; value: RoundRow };
  /** What the shop has kept, by its id. */
  kept: { key: OfEntry; value: KeptEntry };
  /** Own entries that the shop has not acknowledged, by their sequence. */
  outbox: { key: OfEntry; value: Entry };
  people: { key: string; value: { device: string } };
}

export type BayDatabase = IDBPDatabase<Stores>;

export const DATABASE = 'rehang-bay';

export const openDatabase = (): Promise<BayDatabase> =>
  openDB<Stores>(DATABASE, 1, {
    upgrade(database) {
      for (const store of ['rounds', 'kept', 'outbox', 'people'] as const) database.createObjectStore(store);
    },
    // A tab that waits to upgrade or forget must not be held up by one that was left open.
    blocking: (_present, _wanted, event) => (event.target as IDBDatabase).close(),
  });

/** An array stands behind every number, so this holds whatever a round has. */
export const within = (who: string, round: number) => IDBKeyRange.bound([who, round], [who, round, []]);
