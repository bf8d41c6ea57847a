import type { Component } from './components';
import { componentAt, type Explanation, patternProbability } from './explanation';
import { damages, type RoundModel } from './model';

/** What is taken to be wrong at the zero stations: a body hypothesis at each, a setting for each zero setup. */
export interface Opening {
  bodies: [number, number];
  settings: number[];
}

/**
 * Explanations of the zero stations, which have no reading of their own to judge them by: nothing wrong, one
 * thing wrong in fine bands, two things wrong in broad ones.
 */
export function openings(model: RoundModel): Opening[] {
  const none = model.zeros.map(() => 0);
  const list: Opening[] = [{ bodies: [0, 0], settings: none }];
  const broad: (Opening & { who: number })[] = [];
  model.zeros.forEach((zero, k) => {
    zero.settings.forEach((setting, i) => {
      if (i === 0) return;
      const settings = [...none];
      settings[k] = i;
      if (setting.width === 'broad') broad.push({ bodies: [0, 0], settings, who: k });
      else list.push({ bodies: [0, 0], settings });
    });
  });
  for (const z of [0, 1] as const) {
    model.bodies.forEach((body, i) => {
      if (body.pattern === 'none') return;
      const bodies: [number, number] = z === 0 ? [i, 0] : [0, i];
      if (body.width === 'broad') broad.push({ bodies, settings: none, who: -1 - z });
      else if (body.width === 'fine') list.push({ bodies, settings: none });
    });
  }
  broad.forEach((first, i) => {
    for (const second of broad.slice(i + 1)) {
      if (first.who === second.who) continue;
      list.push({
        bodies: [first.bodies[0] || second.bodies[0], first.bodies[1] || second.bodies[1]],
        settings: first.settings.map((value, k) => value || (second.settings[k] ?? 0)),
      });
    }
  });
  return list;
}

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

/** Fills an explanation with what an opening says before any reading away from the zero stations. */
export function open(model: RoundModel, opening: Opening, item: Explanation): void {
  const n = model.size;
  const { mean, covariance, impacts } = item;
  mean.fill(0);
  covariance.fill(0);
  item.bodies.fill(0);
  item.settings.fill(0);
  let logWeight = 0;
  const patterns: [number, number] = [0, 0];
  for (const z of [0, 1] as const) {
    const body = componentAt(model.bodies, opening.bodies[z]);
    item.bodies[z] = opening.bodies[z];
    patterns[z] = body.sides;
    logWeight += body.logPrior;
    const at = 2 * z;
    mean[at] = body.left;
    mean[at + 1] = body.right;
    put(covariance, n, at, at, body.varLeft);
    put(covariance, n, at + 1, at + 1, body.varRight);
    put(covariance, n, at, at + 1, body.covariance);
  }
  for (let k = 0; k < model.zeros.length; k++) {
    const zero = model.zeros[k];
    if (!zero) break;
    const setting = componentAt(zero.settings, opening.settings[k] ?? 0);
    const body = componentAt(model.bodies, opening.bodies[zero.station]);
    item.zeroSettings[k] = opening.settings[k] ?? 0;
    logWeight += setting.logPrior;
    const at = zero.error;
    mean[at] = body.left + setting.left;
    mean[at + 1] = body.right + setting.right;
    put(covariance, n, at, at, body.varLeft + setting.varLeft);
    put(covariance, n, at + 1, at + 1, body.varRight + setting.varRight);
    put(covariance, n, at, at + 1, body.covariance + setting.covariance);
    // A zero setup's error contains the body, which the other setups at this station share.
    share(covariance, n, at, 2 * zero.station, body);
    for (let j = 0; j < k; j++) {
      const earlier = model.zeros[j];
      if (earlier && earlier.station === zero.station) share(covariance, n, at, earlier.error, body);
    }
  }
  let total = 0;
  for (let c = 0; c < impacts.length; c++) {
    const value =
      (model.shares[c] ?? 0) *
      patternProbability(model, c, 0, patterns[0]) *
      patternProbability(model, c, 1, patterns[1]);
    impacts[c] = value;
    total += value;
  }
  for (let c = 0; c < impacts.length; c++) impacts[c] = (impacts[c] ?? 0) / total;
  logWeight += Math.log(total);
  for (const length of model.lengths) {
    if (length.last > 1) continue;
    const damaged = length.ends.some(([station, side]) =>
      damages(station === 0 ? patterns[0] : patterns[1], side),
    );
    logWeight += damaged ? length.damaged : length.sound;
  }
  item.logWeight = logWeight;
}

function put(matrix: Float64Array, n: number, row: number, column: number, value: number): void {
  matrix[row * n + column] = value;
  matrix[column * n + row] = value;
}

function share(matrix: Float64Array, n: number, at: number, other: number, body: Component): void {
  put(matrix, n, at, other, body.varLeft);
  put(matrix, n, at + 1, other + 1, body.varRight);
  put(matrix, n, at, other + 1, body.covariance);
  put(matrix, n, at + 1, other, body.covariance);
}
