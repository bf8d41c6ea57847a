import type { Dimension, Section, Side } from '@/lib/measure';

/** One point of a sheet, apart from its controlled dimensions. `side` null: on the centerline. */
export interface SheetPoint {
  letter: string;
  side: Side | null;
  description: string | null;
  section: Section | null;
  station: number | null;
  zero: boolean;
  /** Distance from the centerline, mm. */
  halfWidth: number | null;
}

export interface Sheet {
  name: string;
  dimensions: Dimension[];
  points: SheetPoint[];
}

export interface SheetRow {
  name: string;
  dimensions: number;
  jobs: number;
}
