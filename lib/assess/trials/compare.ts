import { sdRatio, tInterval, tUpper } from '@/lib/stats';
import {
  cellsOf,
  hangingScatter,
  hangingsOf,
  namesOf,
  readingScatter,
  type Hanging,
  type Pooled,
} from './cells';
import type { Estimated, TrialReading } from './types';
import { absolute, mm } from './words';

export interface Compared extends Estimated {
  /** Two-sided p of no change. */
  p: number | null;
}

export interface TrainingComparison {
  person: string;
  /** Sds after over before, with the interval of the F distribution: reading again, and hanging and reading. */
  reading: Compared;
  hanging: Compared;
  /** Mean after less before over the points of both trials, mm; less the same change of the others where there are any. */
  bias: Compared;
  /** Others who took part in both trials, whose change was taken off. */
  others: number;
  sentences: string[];
}

const FALSE_CALLS = 0.05;

/**
 * What changed of one technician between two trials, before and after a training.
 *
 * Scatter: ratio of the pooled sds of repeats, and of the means of hangings at the same point; exact F intervals, for
 * trials with equally many readings a hanging. Bias: change of the mean over the points of both trials, with Welch's t
 * interval from the scatter of hangings; the mean change of the others is taken off, so that a vehicle that moved between
 * the trials does not count as training. RangeError for readings that are not numbers.
 * Sources: NIST/SEMATECH e-Handbook, 1.3.5.9; Welch (1947), Biometrika 34, 28–35.
 */
export function compareTrials(
  before: readonly TrialReading[],
  after: readonly TrialReading[],
  person: string,
): TrainingComparison {
  const trials = { before: hangingsOf(before), after: hangingsOf(after) };
  const own = (hangings: readonly Hanging[]) => hangings.filter((hanging) => hanging.person === person);
  const [first, second] = [own(trials.before), own(trials.after)];
  const reading = ratioOf(readingScatter(second), readingScatter(first));
  const hanging = sameReadings(first, second)
    ? ratioOf(hangingScatter(second), hangingScatter(first))
    : missing('The hangings of both trials were not read equally often, so their scatters do not compare.');
  const others = namesOf(trials.before, 'person').filter(
    (name) => name !== person && trials.after.some((hanging) => hanging.person === name),
  );
  const bias = biasChange(trials, person, others);
  return {
    person,
    reading,
    hanging,
    bias,
    others: others.length,
    sentences: [
      ratioWords(person, 'Reading again', reading),
      ratioWords(person, 'Hanging and reading', hanging),
      biasWords(person, bias, others.length),
    ],
  };
}

const missing = (why: string): Compared => ({ value: null, low: null, high: null, p: null, why });

function ratioOf(after: Pooled, before: Pooled): Compared {
  const { ratio, low, high, p, why } = sdRatio(after, before);
  return { value: ratio, low, high, p, why };
}

function sameReadings(first: readonly Hanging[], second: readonly Hanging[]): boolean {
  return new Set([...first, ...second].map(({ n }) => n)).size <= 1;
}

interface Shift {
  mean: number;
  /** Parts of its variance with their degrees of freedom. */
  parts: { variance: number; df: number }[];
}

function biasChange(
  trials: { before: Hanging[]; after: Hanging[] },
  person: string,
  others: readonly string[],
): Compared {
  const own = shiftOf(trials, person);
  if (own === null) return missing('No point was measured in both trials.');
  const rest = others.flatMap((name) => shiftOf(trials, name) ?? []);
  const parts = [
    ...own.parts,
    ...rest.flatMap((shift) =>
      shift.parts.map(({ variance, df }) => ({ variance: variance / rest.length ** 2, df })),
    ),
  ];
  const value =
    own.mean - (rest.length === 0 ? 0 : rest.reduce((sum, { mean }) => sum + mean, 0) / rest.length);
  if (parts.some(({ df }) => df === 0)) {
    return {
      ...missing('No point was hung twice in one of the trials, so the change has no uncertainty.'),
      value,
    };
  }
  const variance = parts.reduce((sum, part) => sum + part.variance, 0);
  if (!(variance > 0)) return { ...missing('The hangings show no scatter at all.'), value };
  const df = variance ** 2 / parts.reduce((sum, part) => sum + part.variance ** 2 / part.df, 0);
  const se = Math.sqrt(variance);
  return { value, ...tInterval(value, se, df), p: Math.min(1, 2 * tUpper(Math.abs(value) / se, df)) };
}

/** Change of one person's mean over the points of both trials. */
function shiftOf(trials: { before: Hanging[]; after: Hanging[] }, person: string): Shift | null {
  const cells = [trials.before, trials.after].map((hangings) =>
    cellsOf(hangings.filter((hanging) => hanging.person === person)),
  );
  const [first = [], second = []] = cells;
  const points = first
    .map(({ point }) => point)
    .filter((point) => second.some((cell) => cell.point === point));
  if (points.length === 0) return null;
  const sides = [
    { cells: first, hangings: trials.before },
    { cells: second, hangings: trials.after },
  ].map(({ cells: all, hangings }) => {
    const shared = all.filter(({ point }) => points.includes(point));
    const { sd, df } = hangingScatter(hangings.filter((hanging) => hanging.person === person));
    return {
      mean: shared.reduce((sum, { mean }) => sum + mean, 0) / shared.length,
      part: { variance: (sd ** 2 * shared.reduce((sum, { n }) => sum + 1 / n, 0)) / shared.length ** 2, df },
    };
  });
  return {
    mean: (sides[1]?.mean ?? 0) - (sides[0]?.mean ?? 0),
    parts: sides.map(({ part }) => part),
  };
}

function ratioWords(person: string, what: string, { value, low, high, p, why }: Compared): string {
  if (value === null || low === null || high === null || p === null)
    return `${what} of ${person}: ${why ?? 'not known.'}`;
  const head = `${what} of ${person} scatters ${value.toFixed(2)} times as much as before (${low.toFixed(2)} to ${high.toFixed(2)})`;
  if (p > FALSE_CALLS)
    return `${head}: no change beyond chance, and the interval says what may be hidden in it.`;
  return `${head}: ${value < 1 ? 'better' : 'worse'} beyond chance.`;
}

function biasWords(person: string, bias: Compared, others: number): string {
  if (bias.value === null || bias.p === null) return `Bias of ${person}: ${bias.why ?? 'not known.'}`;
  const side = bias.value > 0 ? 'higher' : 'lower';
  const against =
    others === 0
      ? '; nobody else took part in both, so the vehicle must not have moved between them'
      : ', the change of the others taken off';
  const call = bias.p > FALSE_CALLS ? 'no change beyond chance' : 'a change beyond chance';
  return `${person} reads ${mm(absolute(bias))} ${side} than before${against}: ${call}.`;
}
