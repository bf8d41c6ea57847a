import type { Dimension, Section, Side } from '@/lib/measure/types';

/** One point of a sheet, apart from its controlled dimensions. `side` null: on the centerline. */
export interface SheetPoint {
  letter: string;
  side: Side | null;
  description: string | null;
  /** What is measured to: hole, bolt head, edge, …; see `FEATURES`. */
  feature: string | null;
  section: Section | null;
  station: number | null;
  zero: boolean;
  /** Distance from the centerline, mm. */
  halfWidth: number | null;
}

/** A sheet as it is kept: where its points are, and what is controlled there. */
export interface SheetContent {
  points: SheetPoint[];
  dimensions: Dimension[];
}
