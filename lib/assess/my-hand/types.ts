import type { MeanEstimate, SdEstimate } from '../types';

/** A technician's figures as the rest of the shop's analysis has them; see `technicianFigures`. */
export interface Hand {
  repeatability: SdEstimate;
  setting: SdEstimate;
  bias: MeanEstimate;
}

/** A share of the tolerance: 3 sds over its half width (or 6 over its width), with its 95 % interval. */
export interface Share {
  share: number | null;
  low: number | null;
  high: number | null;
  why: string | null;
}

/** Setting errors and repeats of one kind of place, collapsed; additive. */
export interface HandCell {
  section: 'front' | 'center' | 'rear';
  side: 'L' | 'R';
  gauge: string;
  /** How far outside the zero span the station lies, mm; 0 within it. */
  distance: number;
  /** Setting errors (what the verdicts say the hanger was off by): number, mean, sum of squares about it, mm. */
  n: number;
  mean: number;
  ss: number;
  /** Repeats with the gauge untouched. */
  readingDf: number;
  readingSs: number;
}

export type PlaceKind = 'section and side' | 'distance from the zero span' | 'gauge';

export interface PlaceFigure {
  name: string;
  setups: number;
  /** Scatter of setting there, and its mean. */
  setting: SdEstimate;
  mean: MeanEstimate;
  repeatability: SdEstimate;
  /** Scatter of setting over that of this hand elsewhere, with its interval; p adjusted over the places of the kind. */
  ratio: number | null;
  low: number | null;
  high: number | null;
  p: number | null;
  /** True where the scatter is larger than elsewhere beyond chance. */
  lessSure: boolean;
}

export interface Quarter {
  /** `2025 Q2`. */
  quarter: string;
  reading: { df: number; ss: number };
  setting: { n: number; mean: number; ss: number };
}

export interface ShopQuarter extends Quarter {
  /** Technicians behind it. */
  technicians: number;
}
