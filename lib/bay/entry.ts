import type { GaugeKind, Quantity, Side } from '@/lib/measure/types';

/** What is looked at before the first gauge hangs. Source: common practice. */
export const EQUIPMENT_CHECKS = ['pointers-equal', 'same-tips', 'fixed-mark', 'looks-sound'] as const;
/** The steps of a round, in the order of the trade. Source: common practice. */
export const STEPS = [
  'equipment',
  'center-lengths',
  'zero-gauges',
  'heights',
  'struts',
  'centerline',
  'lengths',
] as const;

export type EquipmentCheck = (typeof EQUIPMENT_CHECKS)[number];
export type Step = (typeof STEPS)[number];

/** By these a dimension of a sheet is known; see `dimensionKey`. */
export interface DimensionRef {
  quantity: Quantity;
  point: string;
  side: Side | null;
  nominal: number;
}

/** What was entered. Lengths are millimetres, values as read, clearance included. */
export type EntryBody =
  | { kind: 'equipment'; check: EquipmentCheck; ok: boolean; note: string | null }
  /** A gauge was set and hung (or a tram gauge set) at a place of the plan; the readings of `setup` follow. */
  | {
      kind: 'hang';
      setup: string;
      place: string;
      gauge: string;
      gaugeKind: GaugeKind;
      /** Code of the one who hung it, where it is not the one who entered it. */
      hand: string | null;
    }
  | { kind: 'read'; setup: string; dimension: DimensionRef; repeat: number; value: number }
  | {
      kind: 'correct';
      setup: string;
      dimension: DimensionRef;
      repeat: number;
      /** What stood there when it was corrected: where another stands by now, the two contradict each other. */
      from: number;
      value: number;
      reason: string;
    }
  /** A whole step (place null) or one place of it is left out. */
  | { kind: 'skip'; step: Step; place: string | null; reason: string }
  /** What was left out is taken up again. */
  | { kind: 'resume'; step: Step; place: string | null }
  /** Of two values that contradict each other the first one stays, or the one of the entry `key` takes its place. */
  | { kind: 'settle'; key: string; keep: 'first' | 'second'; reason: string }
  | { kind: 'finish' };

/** An entry as the device made it. */
export interface Entry {
  /** A random UUID, made by the device: what is sent twice is kept once. */
  key: string;
  /** Name of the device, made by itself on first use, such as `k7`. */
  device: string;
  /** Of the device in this round: 1, 2, …, without a gap. */
  sequence: number;
  /** By the device's clock, epoch milliseconds. */
  at: number;
  body: EntryBody;
}

/** An entry as the shop keeps it. */
export interface KeptEntry extends Entry {
  /** Grows with the order of arrival. */
  id: number;
  /** Code of who entered it. */
  by: string;
  /** Why it contradicts what was there already, or null. */
  conflict: string | null;
}
