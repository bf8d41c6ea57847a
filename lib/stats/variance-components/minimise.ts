import { at } from '@/lib/stats/linear-algebra/element';
import type { Evaluation } from './criterion';
import { boundedNewtonStep, coordinateStep, product } from './newton-step';

export interface Objective {
  value: (x: Float64Array) => number;
  evaluate: (x: Float64Array) => Evaluation;
  /** Bounds from below: 0 for a component, just above it for the residual. */
  lower: Float64Array;
  /** What the value at x is good to. */
  noise: (x: Float64Array) => number;
}

export interface Minimum {
  x: Float64Array;
  value: number;
  gradient: Float64Array;
  /** Second derivatives, or the average information in their place. */
  curvature: readonly Float64Array[];
}

export interface MinimiseOptions {
  /** Variance that stays as it is; −1 for none. */
  held?: number;
  /** Fall of the criterion that is not worth another step; 0 asks for the variances to the last digit. */
  enough?: number;
}

/** So many times the noise of the criterion, and a step is taken without asking it. */
const TRUSTED = 1000;

/** Relative step at which the variances have converged. */
const SMALL_STEP = 1e-9;

/**
 * Minimum of the REML criterion over variances that are bounded from below.
 *
 * Newton steps on the variances themselves, with the average information for second derivatives: it needs no
 * care near 0, where steps on standard deviations have no slope and steps on logarithms never arrive. Where those
 * steps converge slowly, second derivatives come from differences of the gradient.
 */
export function minimise(
  objective: Objective,
  start: Float64Array,
  { held = -1, enough = 0 }: MinimiseOptions = {},
): Minimum {
  const { lower } = objective;
  let x: Float64Array = start.map((value, i) => Math.max(value, at(lower, i)));
  let here = objective.evaluate(x);
  let expected = Infinity;
  let differences = false;
  let curvature: readonly Float64Array[] = here.information;
  for (let iteration = 0; iteration < 100; iteration++) {
    curvature = differences ? differencedHessian(objective, x, here) : here.information;
    let step = boundedNewtonStep(x, here.gradient, curvature, lower, held);
    if (step === null && differences) {
      curvature = here.information;
      step = boundedNewtonStep(x, here.gradient, curvature, lower, held);
    }
    step ??= coordinateStep(x, here.gradient, here.information, lower, held);
    const gain = -product(here.gradient, step);
    if (!(gain > 0)) break;
    const done =
      gain < enough || relativeStep(x, step) < SMALL_STEP || isLast(gain, expected, objective.noise(x));
    if (done && gain < objective.noise(x)) {
      // The criterion cannot show this step any more, but the variances still gain digits by it.
      x = stepped(objective, x, step, 1);
      break;
    }
    limitGrowth(x, step);
    const next = search(objective, x, here, step);
    if (next === null) {
      if (differences || done || gain < 1e-8) break;
      differences = true;
      continue;
    }
    if (gain < 1 && gain > expected / 30) differences = true;
    expected = gain;
    x = next.x;
    here = next.here;
    if (done) break;
  }
  return { x, value: here.value, gradient: here.gradient, curvature };
}

/** Tries the step, then shorter ones, until the criterion falls as it should. */
function search(
  objective: Objective,
  x: Float64Array,
  here: Evaluation,
  step: Float64Array,
): { x: Float64Array; here: Evaluation } | null {
  const slope = product(here.gradient, step);
  // A step worth less than this cannot be judged by the criterion; so near the minimum Newton steps are to be trusted.
  const trusted = -slope < TRUSTED * objective.noise(x);
  const noise = objective.noise(x) * (trusted ? TRUSTED : 1);
  for (let length = 1, tries = 0; tries < 25; tries++, length *= 0.4) {
    const there = stepped(objective, x, step, length);
    const limit = here.value + 1e-4 * length * slope + noise;
    if (tries === 0) {
      const tried = objective.evaluate(there);
      if (tried.value <= limit) return { x: there, here: tried };
    } else if (objective.value(there) <= limit) return { x: there, here: objective.evaluate(there) };
  }
  return null;
}

function stepped({ lower }: Objective, x: Float64Array, step: Float64Array, length: number): Float64Array {
  return x.map((value, i) => Math.max(value + length * at(step, i), at(lower, i)));
}

/** Shortens a step that would multiply a variance beyond what its slope can be trusted for. */
function limitGrowth(x: Float64Array, step: Float64Array): void {
  let length = 1;
  x.forEach((value, i) => {
    const change = at(step, i);
    const residual = i === x.length - 1;
    if (change > 0) length = Math.min(length, (residual ? 9 * value : 9 * value + 0.5) / change);
    else if (residual && change < 0) length = Math.min(length, (0.9 * value) / -change);
  });
  if (length < 1) x.forEach((_, i) => (step[i] = at(step, i) * length));
}

/** At the rate of the last step the next one will change nothing, or the criterion's noise has been reached. */
function isLast(gain: number, before: number, noise: number): boolean {
  if (!(before < 1)) return false;
  const rate = gain / before;
  return (rate < 1e-4 && gain * rate < 1e-18) || (rate > 0.25 && gain < TRUSTED * noise);
}

function relativeStep(x: Float64Array, step: Float64Array): number {
  return x.reduce((most, value, i) => Math.max(most, Math.abs(at(step, i)) / (value + 1e-9)), 0);
}

/** Second derivatives by differences of the gradient, from above so that no variance leaves its bound. */
function differencedHessian(objective: Objective, x: Float64Array, here: Evaluation): Float64Array[] {
  const rows = Array.from(x, (value, j) => {
    const width = 1e-5 * (value > 0 ? value : 1e-3);
    const moved = x.slice();
    moved[j] = value + width;
    const { gradient } = objective.evaluate(moved);
    return gradient.map((g, i) => (g - at(here.gradient, i)) / (at(moved, j) - value));
  });
  return rows.map((row, i) => row.map((value, j) => (value + (rows[j]?.[i] ?? value)) / 2));
}
