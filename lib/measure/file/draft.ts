import type { Cause, GaugeKind, Quantity, Section, Side, Stage } from '../types';

/**
 * A line whose own fields are in order. What a line may leave out is still null: it is taken from other lines of
 * the same sheet, round or gauge, from a known sheet, or from the contract's defaults.
 */
export interface Draft {
  line: number;
  job: string;
  sheet: string | null;
  stage: Stage;
  attempt: number;
  takenAt: number;
  technician: string;
  gauge: string;
  gaugeKind: GaugeKind | null;
  setup: string;
  quantity: Quantity;
  point: string;
  side: Side | null;
  section: Section | null;
  station: number | null;
  zero: boolean | null;
  nominal: number | null;
  tolerance: number | null;
  clearance: number | null;
  repeat: number | null;
  value: number;
  cause: Cause | null;
}
