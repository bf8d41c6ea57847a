import type { Section } from '@/lib/measure/types';

/** `both`: one entry for a point that is alike left and right. `center`: on the centerline. */
export const ROW_SIDES = ['both', 'L', 'R', 'center'] as const;
export type RowSide = (typeof ROW_SIDES)[number];

export const LENGTH_KINDS = ['straight', 'diagonal'] as const;
export type LengthKind = (typeof LENGTH_KINDS)[number];

/** A point as it is entered, with what is controlled there. Lengths in mm. */
export interface PointRow {
  letter: string;
  side: RowSide;
  description: string | null;
  feature: string | null;
  section: Section | null;
  /** Along the vehicle, front to rear, any origin. */
  station: number | null;
  /** Parallel to the datum; null where no height is controlled. */
  height: number | null;
  /** Distance from the centerline. */
  halfWidth: number | null;
  zero: boolean;
  /** Half width of the tolerance of all that is controlled here. */
  tolerance: number;
  /** The sheet's sideways offset of the centre pin, 0 as a rule; null where none is read. */
  centerline: number | null;
}

/** A length as it is entered. An end is a letter, with its side after a dot where both sides share the letter. */
export interface LengthRow {
  from: string;
  to: string;
  /** Null where it is not said, or follows from the ends. */
  kind: LengthKind | null;
  nominal: number;
  tolerance: number;
}

/** A sheet as it is entered. */
export interface SheetRows {
  points: PointRow[];
  lengths: LengthRow[];
}

export const lengthName = ({ from, to }: Pick<LengthRow, 'from' | 'to'>): string => `${from}-${to}`;
