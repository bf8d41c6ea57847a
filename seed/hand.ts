import type { SettingFault } from './slips';

/** How one person sets, hangs and reads. Standard deviations and sizes in mm; rates are per setup. */
export interface Hand {
  /** Sd of reading again with the gauge untouched. */
  repeatability: number;
  /** Sd of one hanger's ordinary setting scatter. */
  setting: number;
  /** Share of setups that are mis-set or carry a slip. */
  missetRate: number;
  /** Systematic part of every height that is not a zero station's. */
  bias: number;
  /** Left hangers other than the zero gauges' hang lower by this. */
  leftLow: number;
  /** Share of setups with clearance, beyond `missetRate`, where it is left out. */
  forgetsClearance: number;
  /** Share of readings in tenths that are taken to the next 0 or 5. */
  readsHalves: number;
  /** Reads heights before the center section's lengths. */
  heightsFirst: boolean;
  /** Faults that this hand makes more often than others do: weights are multiplied. */
  favours: Partial<Record<SettingFault, number>>;
}

/** A technician whose hand may change; `from` rises, and the first begins the technician's time in the shop. */
export interface TechnicianModel {
  code: string;
  /** Share of the work. */
  load: number;
  hands: readonly { from: number; hand: Hand }[];
}

/** An ordinary hand, to be changed where a person differs. */
export const ORDINARY_HAND: Hand = {
  repeatability: 0.5,
  setting: 0.65,
  missetRate: 0.05,
  bias: 0,
  leftLow: 0,
  forgetsClearance: 0,
  readsHalves: 0,
  heightsFirst: false,
  favours: {},
};

/** The hand at a time; undefined before the technician came. */
export function handAt(technician: TechnicianModel, at: number): Hand | undefined {
  return technician.hands.findLast((period) => period.from <= at)?.hand;
}
