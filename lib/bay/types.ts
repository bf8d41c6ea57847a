import type { SheetContent } from '@/lib/measure/sheet/content';
import type { Stage } from '@/lib/measure/types';

export interface BaySheet extends SheetContent {
  name: string;
  revision: number;
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
