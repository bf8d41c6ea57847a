import {
  choleskyInPlace,
  inverseFromCholesky,
  solveLower,
  solveUpper,
} from '@/lib/stats/linear-algebra/cholesky';
import { scatterFor } from './body-prior';
import { settingsOf } from './missets';
import type { BodyPrior, FinalDimension } from './types';

/** A normal distribution near the posterior of the shared errors, to spread lattice points by. */
export interface Proposal {
  /**
   * The shared errors at a standard normal point, and ln(prior density / proposal density) there, up to a constant. The
   * errors are told in one list, which the next point fills anew.
   */
  at(z: Float64Array): { errors: Float64Array; logWeight: number };
}

const ROUNDS = 8;

/**
 * The spread is taken wider than the normal one, since the posterior has the longer tails: much so for an error that
 * three dimensions or more share (a datum), hardly for one of a pair, whose tails are nearly normal.
 */
const WIDER = { many: 1.3, few: 1.05 } as const;

/**
 * Shared errors given the readings, as a normal distribution: each dimension counts with the precision expected of it
 * under its pairings of body and setting, and the pairings are weighed again at the mean found, a few times over.
 */
export function proposalOf(
  dimensions: readonly FinalDimension[],
  loadings: readonly Float64Array[],
  prior: BodyPrior,
): Proposal {
  const q = loadings[0]?.length ?? 0;
  const settings = dimensions.map(({ missets }) => settingsOf(missets));
  let mean = new Float64Array(q);
  let precision = identity(q);
  for (let round = 0; round < ROUNDS; round++) {
    precision = identity(q);
    const steps = identity(q);
    const pull = new Float64Array(q);
    dimensions.forEach((dimension, i) => {
      const row = loadings[i];
      if (!row) return;
      const y = dimension.deviation - dimension.known;
      const at = y - row.reduce((sum, mm, k) => sum + mm * (mean[k] ?? 0), 0);
      const { precision: weight, curvature } = reachOf(dimension, settings[i] ?? [], at, prior);
      const bend = round === ROUNDS - 1 ? curvature : weight;
      for (let j = 0; j < q; j++) {
        const a = row[j] ?? 0;
        if (a === 0) continue;
        pull[j] = (pull[j] ?? 0) + weight * a * y;
        for (let k = 0; k < q; k++) {
          steps[j * q + k] = (steps[j * q + k] ?? 0) + weight * a * (row[k] ?? 0);
          precision[j * q + k] = (precision[j * q + k] ?? 0) + bend * a * (row[k] ?? 0);
        }
      }
    });
    choleskyInPlace(steps, q, 0, 0);
    solveLower(steps, q, pull);
    solveUpper(steps, q, pull);
    mean = pull;
  }
  const covariance = new Float64Array(q * q);
  const factor = precision.slice();
  choleskyInPlace(factor, q, 0, 0);
  inverseFromCholesky(factor, q, covariance);
  const wider = Array.from({ length: q }, (_, k) =>
    loadings.filter((row) => row[k] !== 0).length > 2 ? WIDER.many : WIDER.few,
  );
  const root = covariance.map((value, i) => value * (wider[Math.floor(i / q)] ?? 1) * (wider[i % q] ?? 1));
  choleskyInPlace(root, q, 0, 0);
  const errors = new Float64Array(q);
  return {
    at(z) {
      errors.set(mean);
      let square = 0;
      let own = 0;
      for (let j = 0; j < q; j++) {
        const zj = z[j] ?? 0;
        square += zj * zj;
        let error = errors[j] ?? 0;
        for (let k = 0; k <= j; k++) error += (root[j * q + k] ?? 0) * (z[k] ?? 0);
        errors[j] = error;
        own += error * error;
      }
      return { errors, logWeight: (square - own) / 2 };
    },
  };
}

/**
 * Of the mixture that a reading y comes from: its mean precision, which leads to the mode, and the curvature of its
 * logarithm there, which is less where it is open which part y belongs to. A curvature below 0 counts as 0.
 */
function reachOf(
  dimension: FinalDimension,
  settings: ReturnType<typeof settingsOf>,
  y: number,
  prior: BodyPrior,
): { precision: number; curvature: number } {
  const { own } = dimension;
  const scatter = scatterFor(prior, dimension);
  let [total, first, second] = [0, 0, 0];
  for (const off of [false, true]) {
    for (const setting of settings) {
      const chance = (off ? prior.offShare : 1 - prior.offShare) * setting.chance;
      const variance = (off ? prior.offScatter : scatter) ** 2 + own ** 2 + setting.variance;
      const weight = (chance * Math.exp((-y * y) / (2 * variance))) / Math.sqrt(variance);
      total += weight;
      first += weight / variance;
      second += weight / variance ** 2;
    }
  }
  if (!(total > 0)) return { precision: 0, curvature: 0 };
  const precision = first / total;
  return { precision, curvature: Math.max(0, precision - y * y * (second / total - precision ** 2)) };
}

function identity(n: number): Float64Array {
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) matrix[i * n + i] = 1;
  return matrix;
}
