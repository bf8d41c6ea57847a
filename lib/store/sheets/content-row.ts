import type { Section } from '@/lib/measure';
import type { SheetContent } from '@/lib/measure/sheet';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import { sideOf, type StoredSide } from '@/lib/store/sql/side';
import { dimensionColumns, dimensionOf, type DimensionRow } from './dimension-row';

/** A point as its row holds it; the database's CHECKs hold the sets of words. */
export interface PointRow {
  letter: string;
  side: string;
  description: string | null;
  feature: string | null;
  section: string | null;
  station: number | null;
  zero: boolean;
  halfWidth: number | null;
}

/** Points and dimensions of a sheet, each in an order of its own. */
export const contentColumns = {
  dimensions: {
    select: dimensionColumns,
    orderBy: [{ quantity: 'asc' }, { point: 'asc' }, { side: 'asc' }, { nominal: 'asc' }],
  },
  points: { orderBy: [{ station: { sort: 'asc', nulls: 'first' } }, { letter: 'asc' }, { side: 'asc' }] },
} as const satisfies Prisma.SheetSelect;

export const contentOf = (row: {
  dimensions: readonly DimensionRow[];
  points: readonly PointRow[];
}): SheetContent => ({
  dimensions: row.dimensions.map(dimensionOf),
  points: row.points.map(({ letter, side, description, feature, section, station, zero, halfWidth }) => ({
    letter,
    side: sideOf(side as StoredSide),
    description,
    feature,
    section: section as Section | null,
    station,
    zero,
    halfWidth,
  })),
});
