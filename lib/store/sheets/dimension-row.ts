import type { Dimension, Quantity, Section } from '@/lib/measure';
import { sideOf, type StoredSide } from '@/lib/store/sql/side';

/** A dimension as its row holds it; the database's CHECKs hold the sets of words. */
export interface DimensionRow {
  quantity: string;
  point: string;
  side: string;
  section: string | null;
  station: number | null;
  zero: boolean;
  nominal: number;
  tolerance: number;
}

/** What `named` holds: a length is known by its sheet value too, since its straight and its diagonal may share a name. */
export const namedValue = ({ quantity, nominal }: Pick<Dimension, 'quantity' | 'nominal'>): number =>
  quantity === 'length' ? nominal : 0;

export const dimensionColumns = {
  quantity: true,
  point: true,
  side: true,
  section: true,
  station: true,
  zero: true,
  nominal: true,
  tolerance: true,
} as const;

export const dimensionOf = (row: DimensionRow): Dimension => ({
  quantity: row.quantity as Quantity,
  point: row.point,
  side: sideOf(row.side as StoredSide),
  section: row.section as Section | null,
  station: row.station,
  zero: row.zero,
  nominal: row.nominal,
  tolerance: row.tolerance,
});
