import type { Side } from '@/lib/measure';

/** Keys hold '' where a dimension has no side, since the database takes no two nulls for equal. */
export type StoredSide = Side | '';

export const storedSide = (side: Side | null): StoredSide => side ?? '';
export const sideOf = (side: StoredSide): Side | null => (side === '' ? null : side);
