import type { HabitTally } from '../tally';
import type { Prepared } from './prepare';

/** The size of a habit in its natural unit, with a 95 % interval. */
export interface HabitEffect {
  value: number;
  low: number;
  high: number;
  unit: EffectUnit;
  /** The same figure in the other hands, or what is expected without the habit; null where there is neither. */
  reference: number | null;
}

/**
 * `rounds`, `heights`, `readings`, `repeats`: shares from 0 to 1 of these. `mm`: millimetres. `mm a setup`: millimetres
 * from one setup of a round to the next. `ratio`: a standard deviation over that of the other hands.
 */
export type EffectUnit = 'rounds' | 'heights' | 'readings' | 'repeats' | 'mm' | 'mm a setup' | 'ratio';

/** What one test says of one technician. */
export interface Judgement {
  /** Null where nothing can be tested, and `why` says so. */
  p: number | null;
  why: string | null;
  effect: HabitEffect | null;
  /** Whether a habit of the size that is worth training (see `sizes.ts`) would have shown. */
  enough: boolean;
  /** A sentence with the numbers. */
  evidence: string;
  /** Where in `shown` the setups behind it are. */
  shown: string;
}

/** The hands of a shop, and those that the others may be compared with. */
export interface Hands {
  all: ReadonlyMap<string, HabitTally>;
  reference: ReadonlySet<string>;
  /** What several comparisons ask of the same hand. */
  prepared: ReadonlyMap<string, Prepared>;
}

/** Names of the hands that a technician is compared with. */
export const otherNames = ({ all, reference }: Hands, technician: string): string[] =>
  [...all.keys()].filter((name) => name !== technician && reference.has(name));

/** The tallies that a technician is compared with: everybody's in the reference but the own. */
export const othersOf = (hands: Hands, technician: string): HabitTally[] =>
  otherNames(hands, technician).flatMap((name) => hands.all.get(name) ?? []);

export type Judge = (technician: string, hands: Hands) => Judgement;

export const untested = (why: string): Judgement => ({
  p: null,
  why,
  effect: null,
  enough: false,
  evidence: why,
  shown: '',
});

export const NO_OTHERS = 'There are no other hands to compare with.';
