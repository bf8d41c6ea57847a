import type { Component } from './components';
import { componentAt, type Explanation } from './explanation';
import type { RoundModel } from './model';

/** Room for one explanation before anything is known of it. */
export function emptyExplanation(model: RoundModel): Explanation {
  return {
    logWeight: 0,
    mean: new Float64Array(model.size),
    covariance: new Float64Array(model.size * model.size),
    impacts: new Float64Array(model.shares.length),
    bodies: new Int16Array(model.frame.stations.length),
    zeroSettings: new Int16Array(model.zeros.length),
    settings: new Int16Array(model.steps.length),
  };
}

/** What is taken to be wrong at the zero stations, as a whole explanation names it. */
type Opening = Pick<Explanation, 'bodies' | 'zeroSettings'>;

/** Puts into a fresh state what an opening says before any reading away from the zero stations. */
export function open(
  model: RoundModel,
  opening: Opening,
  { mean, covariance }: Pick<Explanation, 'mean' | 'covariance'>,
): void {
  const n = model.size;
  for (const z of [0, 1] as const) {
    const body = componentAt(model.bodies, opening.bodies[z] ?? 0);
    const at = 2 * z;
    mean[at] = body.left;
    mean[at + 1] = body.right;
    put(covariance, n, at, at, body.varLeft);
    put(covariance, n, at + 1, at + 1, body.varRight);
    put(covariance, n, at, at + 1, body.covariance);
  }
  const { bodies, zeroSettings } = opening;
  const first = model.zeros[0]?.error ?? 0;
  putErrors(model, bodies, 0, zeroSettings, 0, { mean, covariance, n, m: first, C: first * n + first });
  // A zero setup's error contains the body at its station.
  for (const { station, error } of model.zeros)
    share(covariance, n, error, 2 * station, componentAt(model.bodies, bodies[station] ?? 0));
}

/** A state of `n` entries, or a part of one, where its first entry and the corner of its covariance stand. */
interface Place {
  mean: Float64Array;
  covariance: Float64Array;
  n: number;
  m: number;
  C: number;
}

/**
 * Writes the datum errors under one opening, as `open` has them in the whole state, into the first entries of a state;
 * the rest becomes nothing.
 * @param row picks of the opening: a body at each zero station, then a setting for each zero setup.
 */
export function openErrors(model: RoundModel, picks: Int16Array, row: number, into: Place): void {
  const { mean, covariance, n, m, C } = into;
  for (let i = 0; i < n; i++) mean[m + i] = 0;
  for (let i = 0; i < n * n; i++) covariance[C + i] = 0;
  putErrors(model, picks, row, picks, row + 2, into);
}

/** @param bodies picks of the two bodies from `bodyAt` on. @param settings those of the settings from `settingAt` on. */
function putErrors(
  model: RoundModel,
  bodies: Int16Array,
  bodyAt: number,
  settings: Int16Array,
  settingAt: number,
  { mean, covariance, n, m, C }: Place,
): void {
  for (let k = 0; k < model.zeros.length; k++) {
    const zero = model.zeros[k];
    if (!zero) break;
    const setting = componentAt(zero.settings, settings[settingAt + k] ?? 0);
    const body = componentAt(model.bodies, bodies[bodyAt + zero.station] ?? 0);
    const at = 2 * k;
    mean[m + at] = body.left + setting.left;
    mean[m + at + 1] = body.right + setting.right;
    put(covariance, n, at, at, body.varLeft + setting.varLeft, C);
    put(covariance, n, at + 1, at + 1, body.varRight + setting.varRight, C);
    put(covariance, n, at, at + 1, body.covariance + setting.covariance, C);
    // The other setups at this station share its body.
    for (let j = 0; j < k; j++) {
      if (model.zeros[j]?.station === zero.station) share(covariance, n, at, 2 * j, body, C);
    }
  }
}

/** Writes both triangles of a matrix that starts at `from`. */
function put(matrix: Float64Array, n: number, row: number, column: number, value: number, from = 0): void {
  matrix[from + row * n + column] = value;
  matrix[from + column * n + row] = value;
}

function share(matrix: Float64Array, n: number, at: number, other: number, body: Component, from = 0): void {
  put(matrix, n, at, other, body.varLeft, from);
  put(matrix, n, at + 1, other + 1, body.varRight, from);
  put(matrix, n, at, other + 1, body.covariance, from);
  put(matrix, n, at + 1, other, body.covariance, from);
}
