import type { Section } from '@/lib/measure';
import type { SheetContent } from '@/lib/measure/sheet';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import { sideOf, type StoredSide } from '@/lib/store/sql/side';
import { dimensionColumns, dimensionOf } from './dimension-row';

/** Points and dimensions of a sheet, each in an order of its own. */
export const contentColumns = {
  dimensions: {
    select: dimensionColumns,
    orderBy: [{ quantity: 'asc' }, { point: 'asc' }, { side: 'asc' }, { nominal: 'asc' }],
  },
  points: { orderBy: [{ station: { sort: 'asc', nulls: 'first' } }, { letter: 'asc' }, { side: 'asc' }] },
} as const satisfies Prisma.SheetSelect;

export const contentOf = (row: Prisma.SheetGetPayload<{ select: typeof contentColumns }>): SheetContent => ({
  dimensions: row.dimensions.map(dimensionOf),
  points: row.points.map(({ letter, side, description, feature, section, station, zero, halfWidth }) => ({
    ...{ letter, side: sideOf(side as StoredSide), description, feature },
    // The database's CHECK holds the set of sections.
    ...{ section: section as Section | null, station, zero, halfWidth },
  })),
});
