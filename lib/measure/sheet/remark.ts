import type { LengthColumn, PointColumn } from './columns';

/** Where in the sheet as it is entered; rows are counted from 0. */
export type RemarkPlace =
  | { block: 'points'; row: number; column: PointColumn }
  | { block: 'lengths'; row: number; column: LengthColumn };

/** What a remark speaks of: a text as it is, a length in mm, a count. */
export type RemarkValue = string | { mm: number } | { count: number };

/**
 * Something about a sheet that a person should see, as data: the sentence that names the thing and its mend is made of
 * it in the reader's language and units. `fault`: the sheet cannot be kept so. `doubt`: it can, if the maker's sheet
 * says so.
 */
export interface Remark {
  level: 'fault' | 'doubt';
  code: RemarkCode;
  /** Null where it is about the sheet as a whole. */
  at: RemarkPlace | null;
  values: Record<string, RemarkValue>;
}

export const REMARK_CODES = [
  'nothing',
  'letter-missing',
  'letter-wrong',
  'letter-twice',
  'number-wrong',
  'word-wrong',
  'text-long',
  'station-missing',
  'center-height',
  'tolerance-zero',
  'out-of-range',
  'zero-count',
  'zero-side',
  'end-missing',
  'end-unknown',
  'end-side',
  'ends-same',
  'nominal-missing',
  'length-twice',
  'length-third',
  'kind-contradicts',
  'length-unfit',
  'length-short',
  'length-other-kind',
  'length-inches',
  'mirror-height',
  'mirror-half-width',
  'mirror-station',
  'zero-section',
  'order',
  'from-rear',
  'inches',
  'improbable',
] as const;
export type RemarkCode = (typeof REMARK_CODES)[number];

export const remark = (
  level: Remark['level'],
  code: RemarkCode,
  at: RemarkPlace | null,
  values: Remark['values'] = {},
): Remark => ({ level, code, at, values });

export const atPoint = (row: number, column: PointColumn): RemarkPlace => ({ block: 'points', row, column });
export const atLength = (row: number, column: LengthColumn): RemarkPlace => ({
  block: 'lengths',
  row,
  column,
});
