import { chanceUpperLimitBelow, fCdf, fUpperQuantile, noncentralTUpper, tUpperQuantile } from '@/lib/stats';
import { requireLevel, requirePositive, requireWhole } from '@/lib/stats/arguments';
import type { ExpectedScatter, TrialQuestion, TrialSize } from './types';

export interface PlanOptions {
  /** Chance to find what is asked for. Default 0.8. */
  power?: number;
  /** Level of the two-sided intervals. Default 0.95. */
  level?: number;
  /** Hangings of a person at a point that are thought of at all. Default 15. */
  most?: number;
}

export interface TrialPlan {
  /** The smallest number of hangings of each person at each point that has the power; null where none has. */
  size: TrialSize | null;
  power: number | null;
  /** What every number of hangings from 1 on would give. */
  options: { setups: number; power: number }[];
  hangings: number | null;
  readings: number | null;
  sentence: string;
}

/**
 * How many hangings a trial needs: the smallest number a person and point whose power reaches the one wanted.
 *
 * - `bias`: t test of two people's means over the same points; the scatter is that of hangings, sd² = setting² + reading²/n,
 *   with the degrees of freedom of all people's hangings, or of people × points where each point is hung once.
 * - `repeatability`: degrees of freedom of repeats, points × setups × (readings − 1); chance that the χ² upper limit stays
 *   below `ratio` times the true sd.
 * - `setting`: the same for the setting sd, whose degrees of freedom are Satterthwaite's for the difference of two mean
 *   squares (an approximation).
 * - `training`: F test of the scatter of hangings before and after, each in a trial of this size.
 * RangeError for a difference, ratio or sd out of range. Sources: Cohen (1988), chapter 2, for the t test; Satterthwaite
 * (1946), Biometrics Bulletin 2, 110–114; NIST/SEMATECH e-Handbook 7.2.3 and 1.3.5.9.
 */
export function planTrial(
  asked: TrialQuestion,
  size: Omit<TrialSize, 'setups'>,
  scatter: ExpectedScatter,
  options: PlanOptions = {},
): TrialPlan {
  const { power: wanted = 0.8, level = 0.95, most = 15 } = options;
  requireLevel('The power', wanted);
  requireLevel('The level of an interval', level);
  requireWhole('The number of points', size.points, 1);
  requireWhole('The number of people', size.people, 1);
  requireWhole('The number of readings of a hanging', size.readings, 1);
  requirePositive('The scatter of a reading', scatter.reading);
  requirePositive('The scatter of a setting', scatter.setting);
  requireQuestion(asked, size);
  const tried = Array.from({ length: most }, (_, i) => i + 1).map((setups) => ({
    setups,
    power: trialPower(asked, { ...size, setups }, scatter, level),
  }));
  const enough = tried.find(({ power }) => power >= wanted);
  if (!enough) {
    const best = tried.at(-1)?.power ?? 0;
    const sentence =
      `Even ${most} hangings of each person at each point would find it in ${percent(best)} of such trials only: ` +
      'take more points, or ask for a larger difference.';
    return { size: null, power: null, options: tried, hangings: null, readings: null, sentence };
  }
  const { setups, power } = enough;
  const hangings = size.points * size.people * setups;
  return {
    size: { ...size, setups },
    power,
    options: tried,
    hangings,
    readings: hangings * size.readings,
    sentence:
      `${count(size.people, 'person', 'people')} at ${count(size.points, 'point', 'points')}, ` +
      `${count(setups, 'hanging', 'hangings')} each with ${count(size.readings, 'reading', 'readings')}: ` +
      `${hangings} hangings in all find ${askedWords(asked)} in ${percent(power)} of such trials` +
      `${asked.question === 'training' ? ', run before and again after the training' : ''}.`,
  };
}

/** Chance that a trial of this size shows what is asked for. */
export function trialPower(
  asked: TrialQuestion,
  { points, people, setups, readings }: TrialSize,
  { reading, setting }: ExpectedScatter,
  level = 0.95,
): number {
  const hanging = setting ** 2 + reading ** 2 / readings;
  const within = points * (setups - 1);
  switch (asked.question) {
    case 'bias': {
      const df = setups > 1 ? people * within : (people - 1) * (points - 1);
      if (df === 0) return 0;
      const delta = asked.difference / Math.sqrt((2 * hanging) / (points * setups));
      return noncentralTUpper(tUpperQuantile((1 - level) / 2, df), df, delta);
    }
    case 'repeatability': {
      const df = points * setups * (readings - 1);
      return df === 0 ? 0 : chanceUpperLimitBelow(asked.ratio, df, level);
    }
    case 'setting': {
      const repeats = points * setups * (readings - 1);
      if (within === 0 || repeats === 0) return 0;
      const df = setting ** 4 / (hanging ** 2 / within + (reading ** 2 / readings) ** 2 / repeats);
      return chanceUpperLimitBelow(asked.ratio, df, level);
    }
    case 'training': {
      if (within === 0) return 0;
      const limit = 1 / fUpperQuantile((1 - level) / 2, within, within);
      return fCdf(limit / asked.ratio ** 2, within, within);
    }
  }
}

function requireQuestion(asked: TrialQuestion, { people, readings }: Omit<TrialSize, 'setups'>): void {
  if (asked.question === 'bias') {
    requirePositive('The difference to be found', asked.difference);
    if (people < 2) throw new RangeError('A bias between technicians needs two people at least.');
    return;
  }
  if (asked.question === 'training') {
    if (!(asked.ratio > 0 && asked.ratio < 1)) {
      throw new RangeError(`A training leaves a share of the scatter between 0 and 1, not ${asked.ratio}.`);
    }
    return;
  }
  if (!(asked.ratio > 1)) {
    throw new RangeError(
      `The upper limit must be allowed more than the sd itself, not ${asked.ratio} times it.`,
    );
  }
  if (readings < 2)
    throw new RangeError('To tell reading from setting, every hanging must be read twice at least.');
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;
const count = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

function askedWords(asked: TrialQuestion): string {
  switch (asked.question) {
    case 'bias':
      return `a bias of ${asked.difference} mm between two of them`;
    case 'repeatability':
      return `the scatter of reading to within ${asked.ratio} times`;
    case 'setting':
      return `the scatter of setting to within ${asked.ratio} times`;
    case 'training':
      return `a scatter that falls to ${percent(asked.ratio)}`;
  }
}
