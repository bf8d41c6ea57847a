import { address } from './address';
import { bareMillimetres, percent, signed } from './numbers';
import type { EffectUnit, HabitEffect, HabitKey, HabitState } from '@/lib/assess/habits';

/** What the readings say of a habit. */
export const STATE_NAMES: Record<HabitState, string> = {
  found: 'Found',
  'not found': 'Not found',
  'too few readings': 'Too few readings',
};

/** The page of a habit, or of one technician's evidence for it. */
export const habitAddress = (habit: HabitKey, technician?: string): string =>
  address(`/habits/${habit}`, { technician });

/** What an effect is a figure of, as the head of its column. */
export const EFFECT_HEADS: Record<EffectUnit, string> = {
  rounds: 'Share of rounds',
  heights: 'Share of heights',
  readings: 'Share of readings',
  repeats: 'Share of repeats',
  mm: 'Size, mm',
  'mm a setup': 'Change, mm a setup',
  ratio: 'Scatter, as a ratio to other hands',
};

const SHARES: readonly EffectUnit[] = ['rounds', 'heights', 'readings', 'repeats'];

export const isShare = (unit: EffectUnit): boolean => SHARES.includes(unit);

/** A value of an effect without its unit: `83 %`, `−1.84`, `1.07`. */
export function effectValue(value: number, unit: EffectUnit): string {
  if (isShare(unit)) return value < 0 ? signed(value * 100, 0) + '\u00a0%' : percent(value);
  return unit === 'ratio' ? bareMillimetres(value, 2) : signed(value, 2);
}

/** A tick of the axis of an effect. */
export const effectTick = (tick: number, unit: EffectUnit): string =>
  isShare(unit)
    ? `${Number((tick * 100).toFixed(1))}\u00a0%`.replace('-', '\u2212')
    : String(Number(tick.toFixed(2))).replace('-', '\u2212');

const UNITS: Record<EffectUnit, string> = {
  rounds: ' of rounds',
  heights: ' of heights',
  readings: ' of readings',
  repeats: ' of repeats',
  mm: '\u00a0mm',
  'mm a setup': '\u00a0mm a setup',
  ratio: ' times the scatter of other hands',
};

/** `83 % of readings (95 % interval 81 % to 85 %)` */
export function effectWords({ value, low, high, unit }: HabitEffect): string {
  return `${effectValue(value, unit)}${UNITS[unit]} (95\u00a0% interval ${effectValue(low, unit)} to ${effectValue(high, unit)})`;
}

/** A p as it is read: three places, more where it is small, and never zero. */
export function chance(p: number): string {
  if (p < 0.0001) return '<\u00a00.0001';
  return p.toFixed(p < 0.001 ? 4 : 3);
}

/** What the effect of a habit is the size of. */
export const EFFECT_NAMES: Record<HabitKey, string> = {
  'clearance-forgotten': 'Rounds in which a clearance was left out or added twice',
  'another-mark': 'Rounds in which a gauge was set by another mark',
  'careless-zero': 'Rounds in which a zero gauge was likely mis-set',
  'heights-first': 'Rounds in which heights were read first',
  'low-hanger': 'Left less right, beside what is usual',
  'no-rehang': 'Heights out of tolerance that nobody hung again',
  'preferred-digits': 'Readings that end in the preferred digits',
  'drawn-to-sheet': 'Readings at the sheet value beyond those expected',
  'repeats-alike': 'Repeats that are the same, or their scatter',
  'drift-in-round': 'Change from one setup of a round to the next',
  'unequal-pointers': 'By how much the pointers differ in length',
  'pointer-width': 'By how much all lengths are off',
  'one-gauge': 'By how much heights with one gauge are off',
};

/** The unit after a large figure; shares carry their sign of percent. */
export const unitOf = (unit: EffectUnit): string =>
  unit === 'mm' || unit === 'mm a setup' ? '\u00a0mm' : '';
