import {
  type GaugeState,
  type Learned,
  startingPoint,
  type TechnicianHand,
} from '@/lib/assess/cause/learned';

/** What a shop is taken to know for sure, for tests that compare with an outside calculation. */
export interface Known {
  technicians?: Record<string, Partial<TechnicianHand>>;
  gauges?: Record<string, Partial<GaugeState>>;
}

/**
 * The starting point with hands that are known well: one technician unless others are given, no biases, and
 * next to no doubt about them.
 */
export function knownShop({ technicians = { T1: {} }, gauges = {} }: Known = {}): Learned {
  const learned = startingPoint();
  const hand: TechnicianHand = {
    ...learned.newTechnician,
    reading: 0.5,
    setting: 0.8,
    settingLogSe: 0.05,
    bias: 0,
    biasSe: 0.05,
    biasContrastSe: 0.05,
    setups: 500,
  };
  const gauge: GaugeState = { ...learned.newGauge, biasSe: 0.05, setups: 500 };
  learned.newTechnician = hand;
  learned.newGauge = gauge;
  for (const [name, own] of Object.entries(technicians)) learned.technicians[name] = { ...hand, ...own };
  for (const [name, own] of Object.entries(gauges)) learned.gauges[name] = { ...gauge, ...own };
  return learned;
}

/** Few hypotheses, so that every explanation can be enumerated: one size band, mis-sets of the left hanger and left-out clearance. */
export function sparse(learned: Learned): Learned {
  for (const misset of Object.keys(learned.missets) as (keyof Learned['missets'])[])
    learned.missets[misset] = 0;
  learned.missets.left = 0.7;
  learned.missets['clearance-omitted'] = 0.3;
  learned.missetSizes = [0, 0, 1, 0, 0, 0];
  learned.damageSizes = [0, 0, 1, 0, 0, 0];
  return learned;
}
