import type { Learned, RoundVerdict } from '@/lib/assess';
import type { ShopId, VerdictFilter } from '@/lib/store';

/** Keeps what the pages read (outcomes, fit, verdicts) up to date with what is stored. Bodies follow. */

/** Brings the rollups of new jobs up to date now, learns again in the background; one at a time, never twice. */
export declare function refreshSoon(shop: ShopId): void;
/** The same, awaited: for commands and tests. */
export declare function refresh(shop: ShopId, say?: (line: string) => void): Promise<void>;
/** The newest fit with its date; `stale` where readings have come in since. Null before the first. */
export declare function currentLearned(
  shop: ShopId,
): Promise<{ learned: Learned; fittedAt: number; stale: boolean } | null>;
/** Verdicts as assessed, newest round first. */
export declare function roundVerdicts(
  shop: ShopId,
  filter: VerdictFilter,
): Promise<(RoundVerdict & { at: number })[]>;
