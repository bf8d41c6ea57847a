import type { SdEstimate } from '@/lib/assess';
import {
  analyseTrial,
  compareTrials,
  ownPart,
  planTrial,
  runSheet,
  trialPower,
  type OwnPart,
  type RunLine,
  type TrainingComparison,
  type TrialAnalysis,
  type TrialPlan as TrialNumbers,
  type TrialReading,
} from '@/lib/assess/trials';
import type { Viewer } from '@/lib/identity';
import * as refresh from '@/lib/refresh';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { demand, may } from './may';

export type { OwnPart, PersonInTrial, RunLine, TrainingComparison, TrialAnalysis } from '@/lib/assess/trials';
export { plannedReadings, plannedRuns, TRIAL_LIMITS } from '@/lib/store/trials/plan';

/** A trial as far as the viewer may see it. */
export interface TrialView extends store.TrialRow {
  /** The run sheet; of a technician the own runs alone. */
  runs: RunLine[];
  /** Which of these places are filled; never with what. */
  filled: (store.TrialPlace & { at: number })[];
  /** Readings with their values; null for whoever is to enter blind, or may not see them. */
  readings: store.EnteredReading[] | null;
}

/** All trials for who runs them; of a technician those that they take part in, with how far the own part is. */
export async function listTrials(viewer: Viewer): Promise<store.TrialRow[]> {
  const trials = await store.listTrials(viewer.shop.id);
  if (may(viewer, 'run trials')) return trials;
  const own = trials.filter(({ plan }) => plan.people.includes(viewer.code));
  const seen = await Promise.all(own.map(({ id }) => getTrial(viewer, id)));
  return seen.filter((trial) => trial !== null);
}

/** Null where there is no such trial, or the viewer takes no part in it. */
export async function getTrial(viewer: Viewer, id: number): Promise<TrialView | null> {
  const trial = await store.getTrial(viewer.shop.id, id);
  if (trial === null) return null;
  const keeps = may(viewer, 'run trials');
  if (!keeps && !trial.plan.people.includes(viewer.code)) return null;
  const all = linesOf(trial.plan);
  const runs = keeps ? all : all.filter(({ person }) => person === viewer.code);
  const orders = new Set(runs.map(({ order }) => order));
  const filled = trial.readings.filter(({ run }) => orders.has(run));
  const own = all.filter(({ person }) => person === viewer.code).length * trial.plan.readings;
  const read = trial.readings.filter(({ run }) => all[run - 1]?.person === viewer.code).length;
  const blind = trial.closedAt === null && read < own;
  return {
    ...(keeps ? trial : { ...onlyOwn(trial, viewer), entered: filled.length }),
    runs,
    filled: filled.map(({ run, repeat, at }) => ({ run, repeat, at })),
    readings: keeps && !blind ? trial.readings : null,
  };
}

/** Who else takes part, and what the sheet says, is not a technician's to see. */
const onlyOwn = <Row extends store.TrialRow>(trial: Row, viewer: Viewer): Row => ({
  ...trial,
  plan: {
    ...trial.plan,
    people: [viewer.code],
    points: trial.plan.points.map((point) => ({ ...point, value: 0 })),
  },
});

/** The run sheet that follows from a plan. */
const linesOf = ({ points, people, setups, readings, seed }: store.TrialPlan): RunLine[] =>
  runSheet({ points: points.map(({ name }) => name), people, setups, readings, seed });

export interface ExpectedScatter {
  reading: SdEstimate | null;
  setting: SdEstimate | null;
  /** What to plan with, mm. */
  expected: store.TrialPlan['expected'];
}

/** Where a shop has shown no scatter yet, mm. */
const COMMON_SCATTER = { reading: 0.4, setting: 1 };

/** The scatter that this shop has shown so far, to plan with. @throws Refused */
export async function expectedScatter(viewer: Viewer): Promise<ExpectedScatter> {
  demand(viewer, 'run trials');
  const shop = (await refresh.currentFigures(viewer.shop.id))?.figures.shop;
  const known = (estimate: SdEstimate | undefined) =>
    estimate?.sd != null && estimate.sd > 0 ? estimate : null;
  const [reading, setting] = [known(shop?.repeatability), known(shop?.setting)];
  const expected = {
    reading: reading?.sd ?? COMMON_SCATTER.reading,
    setting: setting?.sd ?? COMMON_SCATTER.setting,
  };
  return { reading, setting, expected };
}

/** What a plan of this size would find, and how many hangings it takes. @throws Refused; RangeError for nonsense. */
export function weighPlan(
  viewer: Viewer,
  { asked, points, people, setups, readings, expected }: store.TrialPlan,
): { power: number; needed: TrialNumbers } {
  demand(viewer, 'run trials');
  const size = { points: points.length, people: people.length, readings };
  return {
    needed: planTrial(asked, size, expected, { most: store.TRIAL_LIMITS.setups }),
    power: trialPower(asked, { ...size, setups }, expected),
  };
}

/** @throws Refused; RangeError where the plan cannot be kept. */
export async function createTrial(
  viewer: Viewer,
  trial: { name: string; plan: store.TrialPlan },
): Promise<number> {
  demand(viewer, 'run trials');
  weighPlan(viewer, trial.plan);
  return store.createTrial(viewer.shop.id, trial, actorOf(viewer));
}

/** @throws Refused; RangeError where there is no such trial, or it is closed. */
export async function closeTrial(viewer: Viewer, id: number): Promise<void> {
  demand(viewer, 'run trials');
  await store.closeTrial(viewer.shop.id, id, actorOf(viewer));
}

/**
 * Keeps a reading under the name of whoever the run sheet says reads there. Technicians enter their own runs; who runs
 * trials may write down what others read.
 * @throws RangeError where the place is none of the viewer's, or cannot be filled so.
 */
export async function enterTrialReading(
  viewer: Viewer,
  id: number,
  entry: store.TrialPlace & { value: number },
): Promise<void> {
  const { person } = await runFor(viewer, id, entry.run);
  await store.enterTrialReading(viewer.shop.id, id, { ...entry, by: person }, actorOf(viewer));
}

/** @throws RangeError where the place is none of the viewer's, or holds nothing to correct. */
export async function correctTrialReading(
  viewer: Viewer,
  id: number,
  correction: store.TrialPlace & { value: number; reason: string },
): Promise<void> {
  await runFor(viewer, id, correction.run);
  await store.correctTrialReading(viewer.shop.id, id, correction, actorOf(viewer));
}

async function runFor(viewer: Viewer, id: number, run: number): Promise<RunLine> {
  const line = (await getTrial(viewer, id))?.runs.find(({ order }) => order === run);
  if (line === undefined) throw new RangeError(`You have no run ${run} in this trial.`);
  return line;
}

/** The smallest of the points' tolerances: what holds for all. */
export const toleranceOf = ({ points }: store.TrialPlan): number =>
  Math.min(...points.map(({ tolerance }) => tolerance));

export type Analysed =
  { analysis: TrialAnalysis; complete: number; why: null } | { analysis: null; why: string };

/** What a trial shows, of the hangings that are complete; or what is still wanted. @throws Refused */
export function analysisOf(viewer: Viewer, trial: TrialView): Analysed {
  demand(viewer, 'run trials');
  if (trial.readings === null)
    return { analysis: null, why: 'You take part: figures are shown when your own readings are in.' };
  const readings = completeHangings(trial);
  const pairs = new Set(readings.map(({ person, point }) => JSON.stringify([person, point])));
  const wanted = trial.plan.people.length * trial.plan.points.length;
  if (pairs.size < wanted)
    return {
      analysis: null,
      why: `It takes a complete hanging of each person at each point: ${pairs.size} of ${wanted} are in.`,
    };
  try {
    const complete = readings.length / trial.plan.readings;
    return { analysis: analyseTrial(readings, toleranceOf(trial.plan)), complete, why: null };
  } catch (error) {
    if (error instanceof RangeError) return { analysis: null, why: error.message };
    throw error;
  }
}

/**
 * What a closed trial shows the viewer of the own part; null while it is open, since who knows the own figures reads
 * the rest otherwise, and where the viewer has no complete hanging in it.
 */
export async function ownPartOf(viewer: Viewer, id: number): Promise<OwnPart | null> {
  const trial = await store.getTrial(viewer.shop.id, id);
  if (trial?.closedAt == null || !trial.plan.people.includes(viewer.code)) return null;
  const readings = completeHangings({ ...trial, runs: linesOf(trial.plan) });
  return ownPart(readings, viewer.code, toleranceOf(trial.plan));
}

/** What changed between an earlier trial and this one, of everybody in both. @throws Refused */
export function comparisonOf(
  viewer: Viewer,
  { before, after }: { before: TrialView; after: TrialView },
): TrainingComparison[] {
  demand(viewer, 'run trials');
  const [first, second] = [completeHangings(before), completeHangings(after)];
  return after.plan.people
    .filter((code) => [first, second].every((of) => of.some(({ person }) => person === code)))
    .map((code) => compareTrials(first, second, code));
}

/** Deviations from the sheet, of the hangings all of whose readings are in. */
function completeHangings({
  plan,
  runs,
  readings,
}: Pick<TrialView, 'plan' | 'runs' | 'readings'>): TrialReading[] {
  return runs.flatMap(({ order, person, point, setup }) => {
    const own = (readings ?? []).filter(({ run }) => run === order);
    if (own.length < plan.readings) return [];
    const nominal = plan.points.find(({ name }) => name === point)?.value ?? 0;
    return own.map(({ value }) => ({ person, point, setup, value: value - nominal }));
  });
}
