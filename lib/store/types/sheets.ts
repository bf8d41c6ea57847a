import type { Dimension } from '@/lib/measure';
import type { SheetChange, SheetContent, SheetPoint } from '@/lib/measure/sheet';

export type { SheetChange, SheetContent, SheetPoint };

export interface Sheet {
  name: string;
  dimensions: Dimension[];
  points: SheetPoint[];
}

export interface SheetRow {
  name: string;
  /** Points, left and right counted each. */
  points: number;
  dimensions: number;
  jobs: number;
  revision: number;
  /** Since when it is not offered for new rounds any more, or null. */
  retiredAt: number | null;
}

/** A sheet with how it stands in the shop. */
export interface SheetRecord extends Sheet {
  revision: number;
  retiredAt: number | null;
  jobs: number;
  /** Dimensions with readings, by `dimensionKey`: they cannot be taken out. */
  read: string[];
}

export const SHEET_ORIGINS = ['entered', 'loaded', 'copied', 'corrected', 'found'] as const;
/**
 * How a revision came about: typed in; from a sheet file; copied from another sheet; corrected; or found as it stood
 * when it was about to be corrected, since a measurement file had brought it or added to it.
 */
export type SheetOrigin = (typeof SHEET_ORIGINS)[number];

/** A sheet as it stood after one change by hand. */
export interface SheetRevision {
  revision: number;
  at: number;
  /** Code of who made it. */
  by: string;
  reason: string | null;
  origin: SheetOrigin;
  /** Of a copy: the name of the sheet that was copied. */
  copiedFrom: string | null;
  content: SheetContent;
}

export interface SheetCorrection extends SheetContent {
  /** The revision that was corrected: where another one stands by now, the correction is refused. */
  revision: number;
  reason: string;
}

/** What a correction came to. */
export interface SheetCorrected {
  revision: number;
  changes: SheetChange[];
  /** Readings' means whose deviation was worked out anew, and the rounds and jobs they belong to. */
  observations: number;
  rounds: number;
  jobs: number;
}
