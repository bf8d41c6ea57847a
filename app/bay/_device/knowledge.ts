import type { Learned } from '@/lib/assess/cause/learned';
import type { GaugeKind } from '@/lib/measure/types';

export interface KnownGauge {
  tag: string;
  kind: GaugeKind | null;
  fixedMark: number | null;
  inService: boolean;
}

/** What a device takes into the bay: enough to choose a gauge and to say at once what a reading means. */
export interface Knowledge {
  learned: Learned;
  missCost: number;
  gauges: KnownGauge[];
  /** Codes for whom the person at the device may enter. */
  hands: string[];
}
