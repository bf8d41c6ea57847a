import type { LengthColumn, PointColumn } from '@/lib/measure/sheet';

/** The sheet file's columns, a public contract, in the order of writing. */
export const POINT_FILE_COLUMNS = {
  letter: 'letter',
  side: 'side',
  description: 'description',
  feature: 'feature',
  section: 'section',
  station_mm: 'station',
  height_mm: 'height',
  half_width_mm: 'halfWidth',
  zero: 'zero',
  tolerance_mm: 'tolerance',
  centerline_mm: 'centerline',
} as const satisfies Record<string, PointColumn>;

export const LENGTH_FILE_COLUMNS = {
  from: 'from',
  to: 'to',
  kind: 'kind',
  nominal_mm: 'nominal',
  tolerance_mm: 'tolerance',
} as const satisfies Record<string, LengthColumn>;

/** Without these a block cannot be read. */
export const NEEDED = { points: ['letter'], lengths: ['from', 'to', 'nominal_mm'] } as const;

export const columnsOf = (block: 'points' | 'lengths'): string[] =>
  Object.keys(block === 'points' ? POINT_FILE_COLUMNS : LENGTH_FILE_COLUMNS);
