import type { Side } from '@/lib/measure/types';
import type { DatumLine } from '../types';

/** Heights read high or low; a centre pin stands off to one side. */
export type Kind = 'height' | 'centerline';

export const SIDES_CONCERNED = ['left', 'right', 'both'] as const;
export type SidesConcerned = (typeof SIDES_CONCERNED)[number];

/** One thing that is wrong under a hypothesis: how a gauge was set, or where the body is at one station. */
export interface Fault {
  what: 'gauge' | 'body';
  /** At a zero station, where it tilts the datum and shows at all others. */
  zero: boolean;
  station: number;
  /** The setup that is off; null for the body, which is the same behind every setup. */
  setup: string | null;
  gauge: string | null;
  /** Its station was set up more than once in the round, so the setup has to be named. */
  repeated: boolean;
  /** The sheet's letters, left and right. */
  points: [string | null, string | null];
  sides: SidesConcerned;
  /** Expected size on each side, mm; 0 on a side that is not concerned. */
  left: number;
  right: number;
  /** The recognisable slip whose size fits, where it makes up most of the hypothesis. */
  slip: string | null;
}

/** One height: what was read, and what one hypothesis leads to expect there. */
export interface Bar {
  setup: string;
  gauge: string;
  technician: string;
  point: string;
  side: Side;
  station: number;
  zero: boolean;
  tolerance: number;
  /** Deviation from the sheet, mean of the setup's readings, mm. */
  measured: number;
  /** Deviation that the hypothesis leads to expect, mm: what is wrong, the datum and the known biases. */
  expected: number;
  /** Sd of what is left to ordinary scatter of setting, reading and body, mm. */
  scatter: number;
  /** The last setup of this height in the round. */
  last: boolean;
}

/** Everything that the same things wrong would explain, sizes left open. */
export interface Hypothesis {
  probability: number;
  /** Empty: ordinary scatter alone. */
  faults: Fault[];
  datum: DatumLine[];
  bars: Bar[];
}

export const WEIGHED = ['history', 'height', 'length', 'recheck'] as const;

/** One piece of evidence and which of the two leading hypotheses it speaks for. */
export interface Weighed {
  /** What the shop's history says before any reading, one height, one length, or a recorded re-check. */
  kind: (typeof WEIGHED)[number];
  setup: string | null;
  point: string | null;
  side: Side | null;
  /** Deviation read, mm. */
  measured: number | null;
  /** ln of how many times likelier it is under the first hypothesis than under the second. */
  difference: number;
  /** The same for this and all that went before it. */
  sum: number;
}

/** What stands behind the verdicts of one round. */
export interface RoundEvidence {
  /** Likeliest first. */
  hypotheses: Hypothesis[];
  /** Probability of everything that is not among them. */
  rest: number;
  /** The first against the second, in the order in which the gauges were hung; empty where there is no second. */
  weighing: Weighed[];
}
