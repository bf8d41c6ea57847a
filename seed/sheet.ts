import type { Section, Side } from '@/lib/measure';
import type { Feature } from '@/lib/measure/sheet';

/** A place along the vehicle where a gauge hangs, with its point on either side. Lengths in mm. */
export interface Station {
  x: number;
  section: Section;
  zero: boolean;
  hangs: 'centering' | 'strut';
  letters: Record<Side, string>;
  /** Height above the datum plane. */
  height: Record<Side, number>;
  halfWidth: number;
  description: string;
  /** What is measured to. */
  feature: Feature;
}

/** One end of a length: the index of its station, and its side. */
export interface End {
  station: number;
  side: Side;
}

/** A point-to-point length of a sheet. */
export interface SheetLength {
  point: string;
  ends: readonly [End, End];
  section: Section;
  nominal: number;
}

/** A dimension sheet with what is needed to know the vehicle, too. */
export interface VehicleSheet {
  name: string;
  tolerance: number;
  /** Front to rear. */
  stations: readonly Station[];
  /** Indexes of the two zero stations. */
  zeros: readonly [number, number];
  lengths: readonly SheetLength[];
  /** Pairs of lengths with a common end, read at once with the tracking gauge's third pointer. */
  tracking: readonly (readonly [SheetLength, SheetLength])[];
  /** Whether the centre pins are read, too. */
  centerline: boolean;
}

export const SIDE_SIGN: Record<Side, number> = { L: -1, R: 1 };
