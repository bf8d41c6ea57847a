import type { Section } from '@/lib/measure';

/** How a setup can be wrong, beyond ordinary scatter. `both`, `left` and `right` have no size known in advance. */
export const MISSETS = [
  'both',
  'left',
  'right',
  'clearance-omitted',
  'clearance-twice',
  'other-row',
  'other-mark',
  'tape-10',
  'tape-100',
  'sides-exchanged',
  'digits-exchanged',
] as const;
export type Misset = (typeof MISSETS)[number];

/**
 * Which points of a station are damaged. `both` went the same way, `opposed` one up and the other down. The index of
 * the first four is two bits, left 1 and right 2.
 */
export const PATTERNS = ['none', 'left', 'right', 'both', 'opposed'] as const;
export type Pattern = (typeof PATTERNS)[number];

/** Rounds of one kind share their rates of damage: before the repair, first check after it, later checks. */
export const PHASES = ['before', 'after', 'again'] as const;
export type Phase = (typeof PHASES)[number];

export interface TechnicianHand {
  /** Standard deviation of a reading repeated with the gauge untouched, mm. */
  reading: number;
  /** Standard deviation of one hanger's ordinary setting, mm. */
  setting: number;
  /** Standard error of ln(setting). */
  settingLogSe: number;
  /** Systematic part of a height, against the mean of all technicians, mm, and its standard error. */
  bias: number;
  biasSe: number;
  /** Standard error of the bias less the mean bias of all technicians: smaller, since a common level cancels. */
  biasContrastSe: number;
  /** Probability that one setup is mis-set. */
  missetRate: number;
  /** Setups behind these figures. */
  setups: number;
}

export interface GaugeState {
  bias: number;
  biasSe: number;
  /** Distance from the fixed mark to the mark that is taken for it by mistake, mm: mean and sd of what is known. */
  mark: number;
  markSd: number;
  setups: number;
}

/** One kind of impact: how common it is, and which patterns of damage it leaves in each section. */
export interface ImpactClass {
  share: number;
  patterns: Record<Section, Record<Pattern, number>>;
}

export interface BodyState {
  /** Build or repair scatter of an undamaged point, mm. */
  scatter: number;
  impacts: ImpactClass[];
}

/** Everything the inference needs to know in advance, estimated from the shop's own rounds. Plain JSON. */
export interface Learned {
  version: 1;
  rounds: number;
  technicians: Record<string, TechnicianHand>;
  gauges: Record<string, GaugeState>;
  /** What is assumed of a technician or gauge not met before. */
  newTechnician: TechnicianHand;
  newGauge: GaugeState;
  /** Part of the setting variance that both hangers of a gauge share. */
  common: number;
  /** Given a mis-set, which. Sums to one. */
  missets: Record<Misset, number>;
  /** Weights of the size bands of an unknown mis-set and of damage (see `sizes.ts`). Each sums to one. */
  missetSizes: number[];
  damageSizes: number[];
  bodies: Record<Phase, BodyState>;
  lengths: {
    /** Scatter of a length's setting as a multiple of the technician's setting sd. */
    scatter: number;
    /** Probability that a length is out when a point at one of its ends is damaged, and when none is. */
    outWhenDamaged: number;
    outOtherwise: number;
  };
}

/** Of the stations damaged on both sides by an impact that twists nothing, those whose sides went opposite ways. */
const OPPOSED = 0.02;

const section = (
  damaged: number,
  left: number,
  right: number,
  both: number,
  opposed = OPPOSED,
): Record<Pattern, number> => ({
  none: 1 - damaged,
  left: damaged * left,
  right: damaged * right,
  both: damaged * both * (1 - opposed),
  opposed: damaged * both * opposed,
});

const impact = (
  share: number,
  front: Record<Pattern, number>,
  rear: Record<Pattern, number>,
): ImpactClass => ({ share, patterns: { front, center: section(0.03, 0.35, 0.35, 0.3), rear } });

const quiet = (damaged: number): ImpactClass => ({
  share: 1,
  patterns: {
    front: section(damaged, 0.35, 0.35, 0.3),
    center: section(damaged / 3, 0.35, 0.35, 0.3),
    rear: section(damaged, 0.35, 0.35, 0.3),
  },
});

/**
 * Where a shop without history starts: common practice puts a reading at half a millimetre and a setting at
 * about one; the impact classes say that a front impact leaves its damage at the front, and a side impact on
 * its side. The last class is a twist: most of its stations have one side up and the other down, and that several
 * have is no coincidence as it would be in the others.
 */
export function startingPoint(): Learned {
  return {
    version: 1,
    rounds: 0,
    technicians: {},
    gauges: {},
    newTechnician: {
      reading: 0.5,
      setting: 1,
      settingLogSe: 0.4,
      bias: 0,
      biasSe: 0.5,
      biasContrastSe: 0.5,
      missetRate: 0.06,
      setups: 0,
    },
    newGauge: { bias: 0, biasSe: 0.3, mark: 20, markSd: 6, setups: 0 },
    common: 0.5,
    missets: {
      both: 0.4,
      left: 0.17,
      right: 0.17,
      'clearance-omitted': 0.05,
      'clearance-twice': 0.03,
      'other-row': 0.05,
      'other-mark': 0.05,
      'tape-10': 0.05,
      'tape-100': 0.01,
      'sides-exchanged': 0.01,
      'digits-exchanged': 0.01,
    },
    missetSizes: [0.08, 0.32, 0.22, 0.19, 0.18, 0.01],
    damageSizes: [0.04, 0.18, 0.34, 0.21, 0.18, 0.05],
    bodies: {
      before: {
        scatter: 0.15,
        impacts: [
          impact(0.33, section(0.7, 0.3, 0.3, 0.4), section(0.08, 0.35, 0.35, 0.3)),
          impact(0.25, section(0.08, 0.35, 0.35, 0.3), section(0.7, 0.3, 0.3, 0.4)),
          impact(0.15, section(0.35, 0.7, 0.06, 0.24), section(0.35, 0.7, 0.06, 0.24)),
          impact(0.15, section(0.35, 0.06, 0.7, 0.24), section(0.35, 0.06, 0.7, 0.24)),
          impact(0.09, section(0.03, 0.35, 0.35, 0.3), section(0.03, 0.35, 0.35, 0.3)),
          impact(0.03, section(0.6, 0.1, 0.1, 0.8, 0.9), section(0.6, 0.1, 0.1, 0.8, 0.9)),
        ],
      },
      after: { scatter: 0.8, impacts: [quiet(0.04)] },
      again: { scatter: 0.8, impacts: [quiet(0.03)] },
    },
    lengths: { scatter: 1, outWhenDamaged: 0.65, outOtherwise: 0.02 },
  };
}
