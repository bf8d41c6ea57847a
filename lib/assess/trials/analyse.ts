import {
  benjaminiHochberg,
  crossedTrial,
  fitCollapsedVarianceComponents,
  sdInterval,
  type Categories,
  type CrossedTrial,
} from '@/lib/stats';
import { personBiases } from './biases';
import { hangingScatter, hangingsOf, namesOf, readingScatter, type Hanging, type Pooled } from './cells';
import type { Estimated, TrialReading } from './types';
import { trialWords } from './words';

export interface PersonInTrial {
  person: string;
  hangings: number;
  /** Sd of reading again, and of hanging and reading at the same point (the mean of a hanging). */
  reading: Estimated;
  hanging: Estimated;
  /** Mean of this person at the points that all measured, less the mean of all people. */
  bias: Estimated;
  /** Of no bias, adjusted over the people (Benjamini–Hochberg). */
  p: number | null;
}

export interface TrialAnalysis {
  hangings: number;
  /** Sds by REML with profile limits: setting nested in technicians (and points), technicians crossed with points. */
  components: {
    reading: Estimated;
    setting: Estimated;
    technician: Estimated;
    /** How far technicians differ from point to point. */
    technicianAtPoint: Estimated;
    point: Estimated;
  };
  /** One reading of one hanging by anyone: all but the points. 3 sds over the half width of the tolerance. */
  shareOfTolerance: Estimated;
  distinctCategories: Categories | null;
  /** The two-way crossed analysis of the means of hangings, ANOVA beside REML; its repeats are hangings. */
  crossed: CrossedTrial;
  people: PersonInTrial[];
  sentences: string[];
}

/**
 * A repeat trial: where its scatter comes from, and how each technician stands to the others.
 *
 * Components by REML on the collapsed hangings; where every hanging was read once, reading and setting cannot be told
 * apart and the setting holds both. A bias is taken over the points that everybody measured, its interval from the scatter
 * of hangings about their own person and point (t): it holds for these points, not for all points there could be.
 * RangeError for readings that are not numbers, or none. Sources: those of `fitCollapsedVarianceComponents`,
 * `crossedTrial` and `tInterval`.
 */
export function analyseTrial(readings: readonly TrialReading[], tolerance: number): TrialAnalysis {
  const hangings = hangingsOf(readings);
  if (hangings.length === 0) throw new RangeError('The trial has no readings yet.');
  const components = componentsOf(hangings);
  const crossed = crossedTrial({
    part: hangings.map(({ point }) => point),
    operator: hangings.map(({ person }) => person),
    value: hangings.map(({ mean }) => mean),
    tolerance,
  });
  const people = peopleIn(hangings);
  const analysis = {
    hangings: hangings.length,
    components,
    shareOfTolerance: shareOf(components, crossed, hangings, tolerance),
    distinctCategories: categoriesOf(components),
    crossed,
    people,
  };
  return { ...analysis, sentences: trialWords(analysis, tolerance) };
}

/** Sds of the sources by REML with profile limits; of one person alone the others' sources have none. */
export function componentsOf(hangings: readonly Hanging[]): TrialAnalysis['components'] {
  const people = namesOf(hangings, 'person');
  const points = namesOf(hangings, 'point');
  const cells = [...new Set(hangings.map(({ person, point }) => JSON.stringify([person, point])))];
  const repeatedCells = cells.length < hangings.length;
  const readTwice = hangings.some(({ n }) => n > 1);
  const random: Record<string, number[]> = {};
  if (points.length > 1) random.point = hangings.map(({ point }) => points.indexOf(point));
  if (people.length > 1) random.technician = hangings.map(({ person }) => people.indexOf(person));
  if (
    points.length > 1 &&
    people.length > 1 &&
    repeatedCells &&
    cells.length > people.length + points.length - 1
  ) {
    random.technicianAtPoint = hangings.map(({ person, point }) =>
      cells.indexOf(JSON.stringify([person, point])),
    );
  }
  // Hangings are a level of their own only where a person hung twice at a point, or a hanging stands for no other level.
  const setup = readTwice && hangings.length > cells.length ? 'setting' : null;
  const fit = fitCollapsedVarianceComponents({
    n: hangings.map(({ n }) => n),
    mean: hangings.map(({ mean }) => mean),
    ss: hangings.map(({ ss }) => ss),
    random,
    setup,
  });
  const named = (name: string, none: string): Estimated => {
    const found = fit.components.find((component) => component.name === name);
    return found ? { value: found.sd, low: found.low, high: found.high, why: found.why } : missing(none);
  };
  const { sd, low, high, why } = fit.residual;
  const residual = { value: sd, low, high, why };
  const together = 'Every hanging was read once: reading and setting cannot be told apart.';
  return {
    reading: readTwice ? residual : missing(together),
    setting: readTwice
      ? named('setting', 'Nobody hung twice at a point, so setting shows no scatter of its own.')
      : residual,
    technician: named('technician', 'One technician alone shows no scatter between technicians.'),
    technicianAtPoint: named(
      'technicianAtPoint',
      'Two technicians who hang twice at two points are needed for this.',
    ),
    point: named('point', 'One point alone shows no scatter between points.'),
  };
}

const missing = (why: string): Estimated => ({ value: null, low: null, high: null, why });

function gaugeVariance(components: TrialAnalysis['components']): number {
  const { reading, setting, technician, technicianAtPoint } = components;
  return [reading, setting, technician, technicianAtPoint].reduce(
    (sum, { value }) => sum + (value ?? 0) ** 2,
    0,
  );
}

/**
 * Limits of the sum for a balanced trial: those of the crossed analysis of the hangings' means (modified large sample), and
 * what one reading has more than the mean of n, joined by the squares of their distances (Graybill and Wang 1980).
 */
function shareOf(
  components: TrialAnalysis['components'],
  { intervals, components: { anova } }: CrossedTrial,
  hangings: readonly Hanging[],
  tolerance: number,
): Estimated {
  const share = (variance: number) => (3 * Math.sqrt(Math.max(0, variance))) / tolerance;
  const value = gaugeVariance(components);
  const limits = intervals.modifiedLargeSample?.gauge;
  const n = hangings[0]?.n ?? 1;
  const even = hangings.every((hanging) => hanging.n === n);
  if (!even || limits?.low == null || limits.high === null || anova?.gauge == null) {
    const why = 'The trial is not balanced, or too small for an interval of the sum.';
    return { value: share(value), low: null, high: null, why };
  }
  const { sd, df } = readingScatter(hangings);
  const once = df > 0 ? sdInterval(sd, df) : { low: 0, high: 0 };
  const more = 1 - 1 / n;
  const middle = anova.gauge + more * sd ** 2;
  const down = Math.hypot(anova.gauge - limits.low, more * (sd ** 2 - (once.low ?? 0) ** 2));
  const up = Math.hypot(limits.high - anova.gauge, more * ((once.high ?? 0) ** 2 - sd ** 2));
  return {
    value: share(value),
    low: share(Math.min(value, middle - down)),
    high: share(Math.max(value, middle + up)),
    why: null,
  };
}

function categoriesOf(components: TrialAnalysis['components']): Categories | null {
  const gauge = gaugeVariance(components);
  const point = components.point.value;
  if (point === null || !(gauge > 0)) return null;
  const ratio = point / Math.sqrt(gauge);
  return { raw: Math.SQRT2 * ratio, count: Math.max(1, Math.floor(1.41 * ratio)) };
}

function peopleIn(hangings: readonly Hanging[]): PersonInTrial[] {
  const people = namesOf(hangings, 'person');
  const biases = personBiases(hangings);
  const adjusted = benjaminiHochberg(biases.flatMap(({ p }) => (p === null ? [] : [p])));
  let next = 0;
  return people.map((person, i) => {
    const own = hangings.filter((one) => one.person === person);
    const bias = biases[i] ?? { ...missing('There is no bias to tell.'), p: null };
    return {
      person,
      hangings: own.length,
      reading: sdOf(readingScatter(own), 'Nothing was read twice with the gauge untouched.'),
      hanging: sdOf(hangingScatter(own), 'No point was hung twice.'),
      bias: { value: bias.value, low: bias.low, high: bias.high, why: bias.why },
      p: bias.p === null ? null : (adjusted[next++] ?? null),
    };
  });
}

function sdOf({ sd, df }: Pooled, none: string): Estimated {
  if (df === 0) return missing(none);
  return { value: sd, ...sdInterval(sd, df) };
}
