import type { Side } from '@/lib/measure';
import type { Call } from '@/lib/assess';

/** One height as the picture shows it. */
export interface StationMark {
  key: string;
  point: string;
  side: Side;
  station: number;
  zero: boolean;
  deviation: number;
  tolerance: number;
  call: Call;
  /** The setup that counts for the record; earlier ones are drawn hollow. */
  last: boolean;
  gauge: string;
}
