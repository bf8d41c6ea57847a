import {
  choleskyInPlace,
  inverseFromCholesky,
  solveLower,
  solveUpper,
} from '@/lib/stats/linear-algebra/cholesky';
import { at } from '@/lib/stats/linear-algebra/element';
import type { Design } from './design';

export interface NewtonResult {
  /** Coefficients of the scaled design, and the inverse of the penalised information, by rows. */
  beta: Float64Array;
  covariance: Float64Array;
  iterations: number;
}

/** Newton's method on the penalised log-likelihood, with halved steps; a sentence where it cannot end. */
export function maximise(design: Design, ridge: number): NewtonResult | { why: string } {
  const size = design.names.length + 1;
  let beta = new Float64Array(size);
  let height = penalised(design, beta, ridge);
  for (let iterations = 1; iterations <= 100; iterations++) {
    const { slope, information } = derivatives(design, beta, ridge);
    const dependent = choleskyInPlace(information, size, 0, 1e-11);
    if (dependent >= 0) return { why: whyNot(design, dependent, beta) };
    const covariance = new Float64Array(size * size);
    const step = slope.slice();
    solveLower(information, size, step);
    solveUpper(information, size, step);
    const largest = step.reduce((most, part) => Math.max(most, Math.abs(part)), 0);
    if (largest <= 1e-10) {
      inverseFromCholesky(information, size, covariance);
      return { beta: beta.map((value, j) => value + at(step, j)), covariance, iterations };
    }
    let share = 1;
    let next = beta;
    let reached = -Infinity;
    while (share > 1e-6) {
      next = beta.map((value, j) => value + share * at(step, j));
      reached = penalised(design, next, ridge);
      if (reached >= height - 1e-12 * Math.abs(height)) break;
      share /= 2;
    }
    beta = next;
    height = reached;
    if (beta.some((value) => Math.abs(value) > 500)) return { why: SEPARATED };
  }
  return { why: SEPARATED };
}

const SEPARATED =
  'The covariates separate successes from failures, so the likelihood has no maximum: use a ridge above zero.';

function whyNot(design: Design, dependent: number, beta: Float64Array): string {
  const runaway = design.rows.some((row) => Math.abs(predictor(row, beta)) > 15);
  if (runaway) return SEPARATED;
  const name = design.names[dependent - 1] ?? 'The intercept';
  return `The covariate ${name} is a combination of those before it, so they cannot be told apart.`;
}

export function predictor(row: Float64Array, beta: Float64Array): number {
  return row.reduce((sum, value, j) => sum + value * at(beta, j), 0);
}

/** ln(1 + eᵗ) without overflow. */
function softplus(t: number): number {
  return Math.max(t, 0) + Math.log1p(Math.exp(-Math.abs(t)));
}

export function logLikelihood(design: Design, beta: Float64Array): number {
  return design.rows.reduce((sum, row, i) => {
    const t = predictor(row, beta);
    return sum + (design.successes[i] ?? 0) * t - (design.trials[i] ?? 0) * softplus(t);
  }, 0);
}

function penalised(design: Design, beta: Float64Array, ridge: number): number {
  const pull = beta.reduce((sum, value, j) => (j === 0 ? sum : sum + value * value), 0);
  return logLikelihood(design, beta) - (ridge / 2) * pull;
}

function derivatives(design: Design, beta: Float64Array, ridge: number) {
  const size = beta.length;
  const slope = new Float64Array(size);
  const information = new Float64Array(size * size);
  design.rows.forEach((row, i) => {
    const t = predictor(row, beta);
    const chance = 1 / (1 + Math.exp(-t));
    const trials = design.trials[i] ?? 0;
    const rest = (design.successes[i] ?? 0) - trials * chance;
    const weight = trials * chance * (1 / (1 + Math.exp(t)));
    for (let j = 0; j < size; j++) {
      slope[j] = at(slope, j) + rest * at(row, j);
      for (let k = 0; k < size; k++) {
        information[j * size + k] = at(information, j * size + k) + weight * at(row, j) * at(row, k);
      }
    }
  });
  for (let j = 1; j < size; j++) {
    slope[j] = at(slope, j) - ridge * at(beta, j);
    information[j * size + j] = at(information, j * size + j) + ridge;
  }
  return { slope, information };
}
