import type { ShopQuestions, Standing } from '@/lib/assess/answers';
import { LastUsed } from '@/lib/memory';
import type { ShopId } from '@/lib/store';

/** Where a shop stands by one fit, as this process knows it: as long as nobody else kept answers since. */
export interface Held {
  fit: number;
  /** Of the answers that it belongs to. */
  revision: string;
  standing: Standing;
  questions: ShopQuestions;
  /** What is kept of the months of the years that changed last, by year and question. */
  months: Map<string, Map<string, unknown>>;
  /** The documents that are kept as these objects say; empty where this process did not write them. */
  written: ReadonlyMap<string, unknown>;
}

/** Some megabytes each. */
const MOST = 6;

// One a process, also where the server loads this module more than once.
const all = globalThis as typeof globalThis & { rehangStandings?: LastUsed<Held> };
const shops = (): LastUsed<Held> => (all.rehangStandings ??= new LastUsed<Held>(MOST, () => 1));

/** Spares reading where a shop stands before each new reading; those that were asked for longest ago are let go. */
export const HeldStandings = {
  /** Whoever takes it changes it, and gives it back when that is kept. */
  take(shop: ShopId, fit: number, revision: string): Held | null {
    const held = shops().get(String(shop));
    shops().delete(String(shop));
    return held?.fit === fit && held.revision === revision ? held : null;
  },

  keep: (shop: ShopId, held: Held): void => shops().set(String(shop), held),
};
