import type { Cause, Side, Stage } from '@/lib/measure';

/** How a height's cause came to be known: its gauge was hung again, or somebody recorded it. */
export const PROVED_BY = ['rehang', 'recorded'] as const;
export type ProvedBy = (typeof PROVED_BY)[number];

/** What was said of a height before it was checked again, and what the check proved. */
export interface HeightProofRecord {
  setup: string;
  point: string;
  side: Side;
  /** As said before; sums to one. */
  p: Record<Cause, number>;
  /** Null where the check left it open. */
  proved: Cause | null;
  by: ProvedBy;
}

export interface RoundProofRecord {
  job: string;
  stage: Stage;
  attempt: number;
  /** Version of the round's readings that the proofs were made from. */
  version: number;
  /** The fit that foretold was made before these readings or outcomes came. */
  ahead: boolean;
  heights: HeightProofRecord[];
}

export interface StoredProof extends Omit<HeightProofRecord, 'setup' | 'point' | 'side'> {
  job: string;
  stage: Stage;
  attempt: number;
  /** `2025-03`, in the shop's time zone. */
  month: string;
  ahead: boolean;
}
