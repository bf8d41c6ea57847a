/** Two limits; both null where they cannot be had, and then `why` is a sentence. */
export interface Limits {
  low: number | null;
  high: number | null;
  why: string | null;
}
