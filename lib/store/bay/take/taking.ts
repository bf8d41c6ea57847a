import type { Stage } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import type { Actor, ShopId } from '@/lib/store/types';

/** One entry being taken in: where, by whom, within which transaction. */
export interface Taking {
  queries: Queries;
  shop: ShopId;
  round: {
    id: number;
    job: string;
    stage: Stage;
    attempt: number;
    clearance: number;
    finishedAt: Date | null;
    sheet: { id: number; name: string | null };
  };
  /** Code and row of who entered it. */
  by: string;
  personId: number;
  /** True where they may name another's hand. */
  forOthers: boolean;
  actor: Actor;
  now: Date;
}

/** What became of an entry. */
export interface TakenIn {
  /** Why it contradicts what stands there, in a sentence that names nobody; null where it was taken. */
  conflict: string | null;
  /** Row of whose hand it was. */
  handId?: number | null;
  noSuchHand?: boolean;
}
