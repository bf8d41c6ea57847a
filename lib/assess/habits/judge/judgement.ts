import type { MeanHabit } from '../keys';
import type { HabitTally } from '../tally';

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

/**
 * The hands of a shop, and those that the others may be compared with.
 * @typeParam Part of each hand's tally, what a test looks at, or what it made of that for all hands beforehand
 */
export interface Hands<Part> {
  all: ReadonlyMap<string, Part>;
  reference: ReadonlySet<string>;
}

/** The parts that a technician is compared with: everybody's in the reference but the own. */
export const othersOf = <Part>({ all, reference }: Hands<Part>, technician: string): Part[] =>
  [...all].flatMap(([name, part]) => (name !== technician && reference.has(name) ? [part] : []));

export type Judge<Part> = (technician: string, hands: Hands<Part>) => Judgement;

/** Of a tally, the means behind these habits. */
export interface MeansOf<Habit extends MeanHabit> {
  means: Pick<HabitTally['means'], Habit>;
}

export const untested = (why: string): Judgement => ({
  p: null,
  why,
  effect: null,
  enough: false,
  evidence: why,
  shown: '',
});

export const NO_OTHERS = 'There are no other hands to compare with.';
