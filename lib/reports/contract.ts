import type { Side, Stage } from '@/lib/measure';
import type { CheckAction } from '@/lib/assess/types';

/**
 * The batch report, as the README documents it: a public contract, so a change here is a breaking change. Lengths are
 * millimetres, intervals 95 %. Where a number is null, `why` stands beside it.
 */
export interface BatchReport {
  technicians: ReportedTechnician[];
  gauges: ReportedGauge[];
  heights: ReportedHeight[];
  rounds: ReportedRound[];
  first_time_right: ReportedRate;
}

interface Reason {
  why?: string;
}

export interface ReportedSd extends Reason {
  sd_mm: number | null;
  low_mm: number | null;
  high_mm: number | null;
}

export interface ReportedMean extends Reason {
  mean_mm: number | null;
  low_mm: number | null;
  high_mm: number | null;
}

export interface ReportedRate extends Reason {
  jobs: number;
  right: number;
  rate: number | null;
  low: number | null;
  high: number | null;
}

export interface ReportedTechnician {
  technician: string;
  readings: number;
  setups: number;
  jobs: number;
  repeatability: ReportedSd & { df: number | null };
  setup: ReportedSd;
  bias: ReportedMean;
  first_time_right: ReportedRate & { expected: number | null; shrunk: number | null };
  habits: { habit: string; strength: number; evidence: string; setups: string[] }[];
}

export interface ReportedGauge {
  gauge: string;
  readings: number;
  bias: ReportedMean;
}

export interface ReportedHeight {
  job: string;
  stage: Stage;
  attempt: number;
  setup: string;
  gauge: string;
  technician: string;
  point: string;
  side: Side;
  station_mm: number;
  zero: boolean;
  deviation_mm: number;
  p_neither: number;
  p_gauge: number;
  p_body: number;
  p_both: number;
  misset_mm: number;
  body_mm: number;
  signature: string | null;
}

export interface ReportedRound {
  job: string;
  stage: Stage;
  attempt: number;
  decidable: boolean;
  why: string | null;
  p_zero_misset: number | null;
  next_check: ReportedCheck | null;
}

export interface ReportedCheck {
  action: CheckAction;
  /** The setup to hang again, the first of two to exchange; null where a length is to be read. */
  setup: string | null;
  gain_bits: number;
  /** Only where a length is to be read. */
  point?: string;
  /** Only where two gauges are to be exchanged. */
  other?: string;
}
