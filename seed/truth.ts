import type { Cause, Side, Stage } from '@/lib/measure';
import type { Zone } from './damage';
import type { GaugeModel } from './gauge';
import type { TechnicianModel } from './hand';
import type { SettingFault } from './slips';

/** What stands behind one height of one setup. All sizes in mm. */
export interface HeightTruth {
  setup: string;
  station: number;
  point: string;
  side: Side;
  zero: boolean;
  technician: string;
  gauge: string;
  takenAt: number;
  /** Mean of the setup's readings, as deviation. */
  deviation: number;
  /** Ordinary scatter of this hanger's own setting, habits included. */
  scatter: number;
  /** Mis-set or slip of this hanger's own setting. */
  gross: number;
  fault: SettingFault | null;
  /** Own setting less the zero gauges' settings carried along the datum; at a zero station, its own setting. */
  gaugePart: number;
  /** Body here less the body at the zero points carried along; at a zero station, the body here. */
  bodyPart: number;
  /** Of technician and gauge together; 0 at a zero station. */
  bias: number;
  cause: Cause;
  /** Hung again later in the same round. */
  superseded: boolean;
  /** The re-check's finding stands in the file. */
  labelled: boolean;
}

export interface LengthTruth {
  setup: string;
  point: string;
  technician: string;
  gauge: string;
  /** How much longer the length is than the sheet has it. */
  change: number;
}

export interface RoundTruth {
  stage: Stage;
  attempt: number;
  /** Who measured; a re-hang may be another's. */
  technician: string;
  takenAt: number;
  heights: HeightTruth[];
  lengths: LengthTruth[];
}

export interface JobTruth {
  job: string;
  sheet: string;
  zone: Zone;
  /** Damage was left in after the first repair. */
  incomplete: boolean;
  rounds: RoundTruth[];
  /** As the record of `after` 1 has it, and as the body was; null while the vehicle is in repair. */
  rightFirstTime: { recorded: boolean; body: boolean } | null;
}

export interface DemoTruth {
  seed: number;
  technicians: readonly TechnicianModel[];
  gauges: readonly GaugeModel[];
  jobs: JobTruth[];
}
