/** What missing damage is taken to cost, as a multiple of a needless re-hang, and who said so. */
export interface MissCost {
  cost: number;
  /** Person's code; null where nobody is named. */
  by: string | null;
  at: number;
}

/** The range that can be set: below, a gauge would be blamed on a guess; above, nothing would ever be called. */
export const MISS_COST_RANGE = { least: 3, most: 99 } as const;
