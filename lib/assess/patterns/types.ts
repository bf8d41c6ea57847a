import type { Section, Side } from '@/lib/measure/types';

/** The trade's words for how a whole structure is out of shape; DEVELOPERS.md defines each as a contrast. */
export const PATTERN_NAMES = ['sag', 'twist', 'sway', 'mash', 'diamond'] as const;
export type PatternName = (typeof PATTERN_NAMES)[number];

/** Named from this probability on, given everything that was read in the round. */
export const NAMED_FROM = 0.9;
/** Below this it is as good as not there; between both it is open. */
export const OPEN_FROM = 0.1;

/** Why a pattern is not named. */
export type WhyNot =
  /** Its size is within the tolerance-sized threshold, as far as these readings tell. */
  | 'small'
  /** It may be beyond the threshold; the readings do not tell. */
  | 'open'
  /** As read it would be beyond; the gauges' settings explain that better than the body does. */
  | 'gauge'
  /** Beyond the threshold, but one side alone makes it. */
  | 'one-side'
  /** Beyond the threshold, but one station or one corner alone makes it: a damaged point, not a pattern. */
  | 'one-place'
  /** Lengths of other sections read short with the same gauge alike: the gauge is to be held against a reference first. */
  | 'same-gauge'
  /** The diagonals of the center section differ alike: what shows is the diamond of the whole, no sway of this end. */
  | 'diamond'
  /** The lengths of the two sides differ too: a side is shortened, not pushed back. */
  | 'sides-differ';

/** One pattern at one place of the structure, and what the readings say of it. */
export interface PatternFinding {
  pattern: PatternName;
  /** Of sway, mash and diamond; null for what concerns the whole structure. */
  section: Section | null;
  /** The side that a mash shortens, or that a diamond has pushed back. */
  side: Side | null;
  /** The contrast, mm, with its 95 % interval: all uncertainty of the model in it, gauges and datum included. */
  size: number;
  low: number;
  high: number;
  /** The same contrast of the deviations as they were read, mm. */
  asRead: number;
  /** What the size has to be beyond, mm: the largest tolerance of the dimensions in it. */
  threshold: number;
  /** Probability that it is beyond the threshold and meets the conditions of the pattern. */
  probability: number;
  named: boolean;
  /** Null where it is named. */
  why: WhyNot | null;
}

/** What would have to be read before a pattern can be told. */
export type Missing =
  | 'heights'
  | 'front-heights'
  | 'rear-heights'
  | 'end-heights'
  | 'pins'
  | 'side-lengths'
  | 'diagonals'
  | 'datum';

export interface Untold {
  pattern: PatternName;
  section: Section | null;
  missing: Missing;
}

/** The patterns of one round: those looked at, the named ones first, and those that its readings cannot tell. */
export interface RoundPatterns {
  findings: PatternFinding[];
  untold: Untold[];
}

/** Where a point of the sheet is, for points whose heights are not read. */
export interface PointPlace {
  letter: string;
  side: Side | null;
  station: number | null;
  section: Section | null;
}
