import { MEAN_HABITS, type HabitKey, type MeanHabit, ROUND_HABITS, type RoundHabit } from './keys';
import { addMoments, type Moments, noMoments } from './moments';
import { newestOf, type Shown } from './shown';

/** Grows when tallies of before can no longer be added to those of now. */
export const HABIT_TALLY_FORMAT = 1;

/** Steps that gauges are read in, mm, as classes: a kind belongs to one (see `gather/resolution.ts`). */
export const STEP_CLASSES = ['tenths', 'halves', 'whole'] as const;
export type StepClass = (typeof STEP_CLASSES)[number];

/** A mean over jobs, as a whole and by gauge. */
export interface MeanTally {
  all: Moments;
  by: Record<string, Moments>;
}

/** Dimensions that were read more than once with the gauge untouched. */
export interface RepeatTally {
  /**
   * By number of readings: how many dimensions, and of how many all readings are the same. A dimension that shows the
   * sheet value each time does not count: who is drawn to the sheet value need not copy.
   */
  sets: Record<string, { sets: number; alike: number }>;
  /** Dimensions whose readings are finer than the class says. */
  finer: number;
  ss: number;
  df: number;
}

/**
 * Everything that is needed of one technician in one job to look for habits. Tallies add up (`addTallies`): over the
 * jobs of a month, a year, a shop. Plain JSON; sizes do not grow with the readings.
 */
export interface HabitTally {
  format: number;
  jobs: number;
  setups: number;
  /** Setups that were looked at for each habit. */
  looked: Partial<Record<HabitKey, number>>;
  /** Rounds that could show a habit, and that did. */
  rounds: Record<RoundHabit, { n: number; x: number }>;
  means: Record<MeanHabit, MeanTally>;
  /** Lengths by tram: how many, and the sum of 1000 mm / length. */
  lengths: { n: number; x: number };
  /** By gauge: heights, and the sum of their places in the round (0, 1, …), for what drift explains of a gauge. */
  places: Record<string, { n: number; x: number }>;
  digits: {
    /** Last digit of first readings in tenths, heights away from the zero stations. */
    tenths: number[];
    /** First readings in tenths other than the sheet value itself, and those that end in 0 or 5. */
    heaped: { n: number; x: number };
    /** First readings in halves other than the sheet value itself, and those on a whole millimetre. */
    halves: { n: number; x: number };
    /** First readings in halves that are the sheet value itself. */
    halvesAtSheet: number;
    /** First readings in whole millimetres: remainder by 5 of the sheet value × remainder by 5 of the deviation. */
    whole: number[];
  };
  /** First readings of heights away from the zero stations by half millimetres from the sheet value (see `drawn.ts`). */
  near: number[];
  repeats: Record<StepClass, RepeatTally>;
  /** The newest setups that show something, by habit and, where it matters which, `habit:what`. */
  shown: Record<string, Shown[]>;
}

/** Bins of half a millimetre around the sheet value: the middle one, and as many on either side. */
export const NEAR_BINS = 5;

const zeros = (count: number): number[] => Array.from({ length: count }, () => 0);

// One is made for each job and hand, so by a plain loop: a list of pairs takes several times as long.
function record<K extends string, T>(keys: readonly K[], value: () => T): Record<K, T> {
  const made: Partial<Record<K, T>> = {};
  for (const key of keys) made[key] = value();
  return made as Record<K, T>;
}

export function emptyTally(): HabitTally {
  return {
    format: HABIT_TALLY_FORMAT,
    jobs: 0,
    setups: 0,
    looked: {},
    rounds: record(ROUND_HABITS, () => ({ n: 0, x: 0 })),
    means: record(MEAN_HABITS, () => ({ all: noMoments(), by: {} })),
    lengths: { n: 0, x: 0 },
    places: {},
    digits: {
      tenths: zeros(10),
      heaped: { n: 0, x: 0 },
      halves: { n: 0, x: 0 },
      halvesAtSheet: 0,
      whole: zeros(25),
    },
    near: zeros(2 * NEAR_BINS + 1),
    repeats: record(STEP_CLASSES, () => ({ sets: {}, finer: 0, ss: 0, df: 0 })),
    shown: {},
  };
}

/** So many lists of what is shown wait before the newest of them are found. */
const LISTS = 50;

/** The sum of tallies of one technician. Order changes nothing but rounding. */
export function addTallies(tallies: Iterable<HabitTally>): HabitTally {
  const sum = emptyTally();
  const shown = new Map<string, (readonly Shown[])[]>();
  for (const tally of tallies) {
    addInto(sum, tally);
    for (const [what, setups] of Object.entries(tally.shown)) {
      const lists = shown.get(what) ?? [];
      lists.push(setups);
      // Cut back now and then, so that adding many tallies costs no more than their number.
      shown.set(what, lists.length > LISTS ? [newestOf(lists)] : lists);
    }
  }
  sum.shown = Object.fromEntries([...shown].map(([what, lists]) => [what, newestOf(lists)]));
  return inOrderOfGauges(sum);
}

/** The same without the setups that show something, which are the most work: `shown` is empty. */
export function addCountsOf(tallies: Iterable<HabitTally>): HabitTally {
  const sum = emptyTally();
  for (const tally of tallies) addInto(sum, tally);
  return inOrderOfGauges(sum);
}

/**
 * What is reckoned over the gauges of a hand is added up in this order. A tally that a database gives back may hold its
 * fields in another one than it was handed, and the last digits of a figure must not hang on that.
 */
function inOrderOfGauges(sum: HabitTally): HabitTally {
  for (const habit of MEAN_HABITS) sum.means[habit].by = inOrder(sum.means[habit].by);
  sum.places = inOrder(sum.places);
  return sum;
}

function inOrder<Of>(by: Record<string, Of>): Record<string, Of> {
  const tags = Object.keys(by);
  if (tags.every((tag, i) => i === 0 || (tags[i - 1] ?? '') < tag)) return by;
  return Object.fromEntries(Object.entries(by).sort(([a], [b]) => (a < b ? -1 : 1)));
}

function addInto(sum: HabitTally, tally: HabitTally): void {
  if (tally.format !== HABIT_TALLY_FORMAT) {
    throw new RangeError(
      `A tally of habits has format ${tally.format}; ${HABIT_TALLY_FORMAT} is read. Make it again.`,
    );
  }
  sum.jobs += tally.jobs;
  sum.setups += tally.setups;
  for (const [habit, count] of Object.entries(tally.looked) as [HabitKey, number][]) {
    sum.looked[habit] = (sum.looked[habit] ?? 0) + count;
  }
  for (const habit of ROUND_HABITS) addCounts(sum.rounds[habit], tally.rounds[habit]);
  for (const habit of MEAN_HABITS) {
    const into = sum.means[habit];
    into.all = addMoments(into.all, tally.means[habit].all);
    for (const [gauge, moments] of Object.entries(tally.means[habit].by)) {
      into.by[gauge] = addMoments(into.by[gauge] ?? noMoments(), moments);
    }
  }
  addCounts(sum.lengths, tally.lengths);
  for (const [gauge, places] of Object.entries(tally.places)) {
    addCounts((sum.places[gauge] ??= { n: 0, x: 0 }), places);
  }
  addCounts(sum.digits.heaped, tally.digits.heaped);
  addCounts(sum.digits.halves, tally.digits.halves);
  sum.digits.halvesAtSheet += tally.digits.halvesAtSheet;
  addList(sum.digits.tenths, tally.digits.tenths);
  addList(sum.digits.whole, tally.digits.whole);
  addList(sum.near, tally.near);
  for (const step of STEP_CLASSES) addRepeats(sum.repeats[step], tally.repeats[step]);
}

function addCounts(into: { n: number; x: number }, from: { n: number; x: number }): void {
  into.n += from.n;
  into.x += from.x;
}

function addList(into: number[], from: readonly number[]): void {
  from.forEach((value, i) => (into[i] = (into[i] ?? 0) + value));
}

function addRepeats(into: RepeatTally, from: RepeatTally): void {
  into.finer += from.finer;
  into.ss += from.ss;
  into.df += from.df;
  for (const [n, { sets, alike }] of Object.entries(from.sets)) {
    const known = into.sets[n] ?? { sets: 0, alike: 0 };
    into.sets[n] = { sets: known.sets + sets, alike: known.alike + alike };
  }
}
