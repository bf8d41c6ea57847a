import type { Side } from '@/lib/measure';
import type { Verdict } from '@/app/_words/verdicts';

/** One height as the picture shows it. */
export interface StationMark {
  key: string;
  point: string;
  side: Side;
  station: number;
  zero: boolean;
  deviation: number;
  tolerance: number;
  verdict: Verdict;
  /** The setup that counts for the record; earlier ones are drawn hollow. */
  last: boolean;
  gauge: string;
}

/** What the zero gauges of one side are estimated to be set wrong by, mm. */
export interface DatumTilt {
  side: Side;
  ends: { station: number; misset: number }[];
}
