import type { LengthColumn, PointColumn } from '@/lib/measure/sheet';

/** Names of the editor's fields; rows are counted from 0. */
export const pointField = (row: number, column: PointColumn): string => `point ${row} ${column}`;
export const lengthField = (row: number, column: LengthColumn): string => `length ${row} ${column}`;
