import { address } from './address';
import { brief, decimal, percent, signed, signedDecimal, unit } from './numbers';
import { words } from './words';
import { millimetresToInches } from '@/lib/measure/units';
import type { EffectUnit, HabitEffect, HabitKey, HabitState } from '@/lib/assess/habits';

/** What the readings say of a habit. */
export const stateName = (state: HabitState): string => words('terms')(`habits.states.${keyOf(state)}`);

/** A name with blanks as a key of the catalogue. */
const keyOf = <Name extends string>(name: Name) => name.replaceAll(' ', '-') as Dashed<Name>;

type Dashed<Name extends string> = Name extends `${infer Head} ${infer Tail}`
  ? `${Head}-${Dashed<Tail>}`
  : Name;

/** The page of a habit, or of one technician's evidence for it. */
export const habitAddress = (habit: HabitKey, technician?: string): string =>
  address(`/habits/${habit}`, { technician });

/** What an effect is a figure of, as the head of its column. */
export const effectHead = (of: EffectUnit): string =>
  words('terms')(`habits.heads.${keyOf(of)}`, { unit: unit() });

const SHARES: readonly EffectUnit[] = ['rounds', 'heights', 'readings', 'repeats'];

export const isShare = (of: EffectUnit): boolean => SHARES.includes(of);

/** A value of an effect without its unit: `83 %`, `−1.84`, `1.07`. */
export function effectValue(value: number, of: EffectUnit): string {
  if (isShare(of)) return value < 0 ? `${signedDecimal(value * 100, 0)}\u00a0%` : percent(value);
  return of === 'ratio' ? decimal(value, 2) : signed(value, 2);
}

/** A tick of the axis of an effect, with no more digits than it has. */
export function effectTick(tick: number, of: EffectUnit): string {
  if (isShare(of)) return `${brief(tick * 100, 1)}\u00a0%`;
  return of === 'ratio' || unit() === 'mm' ? brief(tick, 2) : brief(millimetresToInches(tick), 4);
}

/** `83 % of readings (95 % interval 81 % to 85 %)` */
export function effectWords({ value, low, high, unit: of }: HabitEffect): string {
  return words('terms')(`habits.effects.${keyOf(of)}`, {
    value: effectValue(value, of),
    low: effectValue(low, of),
    high: effectValue(high, of),
    unit: unit(),
  });
}

/** A p as it is read: three places, more where it is small, and never zero. */
export function chance(p: number): string {
  if (p < 0.0001) return `<\u00a0${decimal(0.0001, 4)}`;
  return decimal(p, p < 0.001 ? 4 : 3);
}

/** What the effect of a habit is the size of. */
export const effectName = (habit: HabitKey): string => words('terms')(`habits.names.${habit}`);

/** The unit after a large figure; shares carry their sign of percent. */
export const unitOf = (of: EffectUnit): string =>
  of === 'mm' || of === 'mm a setup' ? `\u00a0${unit()}` : '';
