/** What is entered of a point, in the order of typing. */
export const POINT_COLUMNS = [
  'letter',
  'side',
  'description',
  'feature',
  'section',
  'station',
  'height',
  'halfWidth',
  'zero',
  'tolerance',
  'centerline',
] as const;
/** What is entered of a length. */
export const LENGTH_COLUMNS = ['from', 'to', 'kind', 'nominal', 'tolerance'] as const;

export type PointColumn = (typeof POINT_COLUMNS)[number];
export type LengthColumn = (typeof LENGTH_COLUMNS)[number];

/** A row as it is typed. */
export type TypedPoint = Record<PointColumn, string>;
export type TypedLength = Record<LengthColumn, string>;

/** A sheet as it is typed, empty rows included. */
export interface TypedSheet {
  points: TypedPoint[];
  lengths: TypedLength[];
}

const empty = <Column extends string>(columns: readonly Column[]) =>
  Object.fromEntries(columns.map((column) => [column, ''])) as Record<Column, string>;

/** Both sides alike is the rule. */
export const emptyPoint = (): TypedPoint => ({ ...empty(POINT_COLUMNS), side: 'both' });
export const emptyLength = (): TypedLength => empty(LENGTH_COLUMNS);

/** A side alone is what an empty row says too. */
export const isBlankPoint = (row: TypedPoint): boolean =>
  POINT_COLUMNS.every((column) => column === 'side' || row[column].trim() === '');
export const isBlankLength = (row: TypedLength): boolean =>
  LENGTH_COLUMNS.every((column) => column === 'kind' || row[column].trim() === '');
