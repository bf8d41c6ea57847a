import { deviationOf } from './deviation';
import { dimensionKey } from './dimension';
import { grouped } from './grouped';
import type { Job, Observation, Reading, Round, Setup } from './types';

/**
 * Collapses readings into jobs, rounds, setups and observations.
 *
 * The order of the readings changes nothing, to the last bit: values are summed in order of size, setups stand
 * in order of their first reading (then label), observations likewise (then dimension), jobs likewise (then
 * number). Rounds stand before 1, before 2, …, after 1, ….
 */
export function collapse(readings: Iterable<Reading>): Job[] {
  return collapseJobs(grouped(readings, (reading) => reading.job).values());
}

/** The same of readings that come job by job: no more than one job’s are asked for at a time. */
export function collapseJobs(each: Iterable<Reading[]>): Job[] {
  const jobs: { first: number; value: Job }[] = [];
  for (const lines of each) {
    const [first] = lines;
    if (first !== undefined) jobs.push({ first: firstTime(lines), value: collapseJob(first.job, lines) });
  }
  jobs.sort((a, b) => a.first - b.first || byText(a.value.job, b.value.job));
  return jobs.map(({ value }) => value);
}

function collapseJob(job: string, readings: Reading[]): Job {
  // Pushed one by one, here and below: a list that `map` makes changes its kind once it is compiled.
  const rounds: Round[] = [];
  for (const lines of grouped(readings, (r) => `${r.stage} ${r.attempt}`).values())
    rounds.push(collapseRound(job, lines));
  rounds.sort((a, b) => byStage(a) - byStage(b) || a.attempt - b.attempt);
  return { job, sheet: agreed(readings, (r) => r.sheet), rounds };
}

function collapseRound(job: string, readings: Reading[]): Round {
  const [first] = readings;
  if (first === undefined) throw new RangeError('A round needs at least one reading.');
  const setups: Setup[] = [];
  for (const [label, lines] of grouped(readings, (r) => r.setup)) setups.push(collapseSetup(label, lines));
  setups.sort((a, b) => a.takenAt - b.takenAt || byText(a.label, b.label));
  return {
    job,
    sheet: agreed(readings, (r) => r.sheet),
    stage: first.stage,
    attempt: first.attempt,
    clearance: agreed(readings, (r) => (r.quantity === 'height' ? r.clearance : null)) ?? 0,
    setups,
  };
}

function collapseSetup(label: string, readings: Reading[]): Setup {
  const [first] = readings;
  if (first === undefined) throw new RangeError('A setup needs at least one reading.');
  const keyed: { key: string; value: Observation }[] = [];
  for (const [key, lines] of grouped(readings, dimensionKey)) keyed.push({ key, value: observe(lines) });
  keyed.sort((a, b) => a.value.takenAt - b.value.takenAt || byText(a.key, b.key));
  const observations: Observation[] = [];
  for (const { value } of keyed) observations.push(value);
  return {
    label,
    technician: first.technician,
    gauge: first.gauge,
    gaugeKind: agreed(readings, (r) => r.gaugeKind),
    takenAt: firstTime(readings),
    observations,
  };
}

/** Count, mean and sum of squares of the deviations of one dimension in one setup, by two passes. */
function observe(readings: Reading[]): Observation {
  const [first] = readings;
  if (first === undefined) throw new RangeError('An observation needs at least one reading.');
  const { n, mean, ss } = spreadOf(readings.map(deviationOf));
  return {
    quantity: first.quantity,
    point: first.point,
    side: first.side,
    section: agreed(readings, (r) => r.section),
    station: first.station,
    zero: first.zero,
    nominal: first.nominal,
    tolerance: first.tolerance,
    n,
    deviation: mean,
    ss,
    cause: agreed(readings, (r) => r.cause),
    takenAt: firstTime(readings),
  };
}

/** Count, mean and sum of squared differences from it, mm², of at least one deviation; their order changes nothing. */
export function spreadOf(deviations: readonly number[]): { n: number; mean: number; ss: number } {
  const n = deviations.length;
  const [only = 0] = deviations;
  if (n === 1) return { n, mean: only, ss: 0 };
  const [, other = 0] = deviations;
  const inOrder = n === 2 && only <= other;
  const sorted = inOrder ? deviations : [...deviations].sort((a, b) => a - b);
  const [origin = 0] = sorted;
  const mean = origin + sorted.reduce((sum, d) => sum + (d - origin), 0) / n;
  const residual = sorted.reduce((sum, d) => sum + (d - mean), 0);
  const squares = sorted.reduce((sum, d) => sum + (d - mean) ** 2, 0);
  return { n, mean, ss: Math.max(0, squares - residual ** 2 / n) };
}

const byStage = (round: Round) => (round.stage === 'before' ? 0 : 1);

const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

function firstTime(readings: readonly Reading[]): number {
  return readings.reduce((first, reading) => Math.min(first, reading.takenAt), Infinity);
}

/** What the lines that state it say; they agree in an accepted file. */
function agreed<T>(readings: readonly Reading[], of: (reading: Reading) => T | null): T | null {
  for (const reading of readings) {
    const value = of(reading);
    if (value !== null) return value;
  }
  return null;
}
