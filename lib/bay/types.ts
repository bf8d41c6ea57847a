import type { Dimension, Section, Side, Stage } from '@/lib/measure/types';

/** A point of the sheet as the bay needs it. */
export interface BayPoint {
  letter: string;
  side: Side | null;
  description: string | null;
  feature: string | null;
  section: Section | null;
  station: number | null;
  zero: boolean;
  halfWidth: number | null;
}

export interface BaySheet {
  name: string;
  revision: number;
  points: BayPoint[];
  dimensions: Dimension[];
}

/** A round that is measured beside the car. */
export interface BayHead {
  id: number;
  job: string;
  sheet: BaySheet;
  stage: Stage;
  attempt: number;
  /** Added to every height, mm. */
  clearance: number;
  /** Code of who began it. */
  by: string;
  startedAt: number;
  finishedAt: number | null;
}
