import type { Quantity } from '../types';

/** The largest measurement file that is read, bytes (about two million readings). */
export const MAX_FILE_BYTES = 250 * 1000 * 1000;

/** The most lines that are read: more than readings fit into a file of that size. */
export const MAX_LINES = 3_000_000;

/** The most blank lines among them. */
export const MAX_BLANK_LINES = 100_000;

/** The longest line that can be a reading, characters: longer means a quote that was never closed. */
export const MAX_LINE = 100_000;

/** The longest label: job, sheet, technician, gauge, setup, point. */
export const MAX_LABEL = 80;

export interface Range {
  low: number;
  high: number;
}

/** What can be a reading or a sheet value of a road vehicle, mm. Wide on purpose: only nonsense lies outside. */
export const VALUE_RANGE: Record<Quantity, Range> = {
  length: { low: 1, high: 20_000 },
  height: { low: -3_000, high: 6_000 },
  centerline: { low: -3_000, high: 3_000 },
};

export const STATION_RANGE: Range = { low: -30_000, high: 30_000 };
export const CLEARANCE_RANGE: Range = { low: 0, high: 2_000 };
/** Exclusive at the low end. */
export const TOLERANCE_RANGE: Range = { low: 0, high: 100 };
export const COUNT_RANGE: Range = { low: 1, high: 10_000 };

/** A clock may run this far ahead before its reading is in the future, ms. */
export const CLOCK_ALLOWANCE = 5 * 60 * 1000;

/** No reading is older than this. */
export const EARLIEST_YEAR = 1970;
