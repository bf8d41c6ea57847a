import { type Beam, zeroPicks } from './beam';
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
      if (body.pattern === 'none' || !canBe(model, z, body)) return;
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

/** Whether any impact leaves a body like this at a zero station. */
const canBe = (model: RoundModel, station: 0 | 1, { sides }: Component): boolean =>
  model.shares.some((share, c) => share * patternProbability(model, c, station, sides) > 0);

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
  const { mean, covariance } = item;
  mean.fill(0);
  covariance.fill(0);
  item.bodies.fill(0);
  item.settings.fill(0);
  for (const z of [0, 1] as const) {
    const body = componentAt(model.bodies, opening.bodies[z]);
    item.bodies[z] = opening.bodies[z];
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
  item.logWeight = weigh(model, opening, item.impacts, 0);
}

/** Fills a beam with all openings of a round: of each the datum errors, as `open` has them in the whole state. */
export function openBeam(model: RoundModel, beam: Beam): void {
  const list = openings(model);
  beam.begin(model, list.length);
  const { size: n, mean, covariance, impactCount, pickCount, picks } = beam;
  mean.fill(0, 0, n * list.length);
  covariance.fill(0, 0, n * n * list.length);
  picks.fill(0, 0, pickCount * list.length);
  list.forEach((opening, index) => {
    const m = index * n;
    const C = index * n * n;
    const pick = index * pickCount;
    picks[pick] = opening.bodies[0];
    picks[pick + 1] = opening.bodies[1];
    for (let k = 0; k < model.zeros.length; k++) {
      const zero = model.zeros[k];
      if (!zero) break;
      const setting = componentAt(zero.settings, opening.settings[k] ?? 0);
      const body = componentAt(model.bodies, opening.bodies[zero.station]);
      picks[pick + zeroPicks(model) + k] = opening.settings[k] ?? 0;
      const at = 2 * k;
      mean[m + at] = body.left + setting.left;
      mean[m + at + 1] = body.right + setting.right;
      put(covariance, n, at, at, body.varLeft + setting.varLeft, C);
      put(covariance, n, at + 1, at + 1, body.varRight + setting.varRight, C);
      put(covariance, n, at, at + 1, body.covariance + setting.covariance, C);
      for (let j = 0; j < k; j++) {
        if (model.zeros[j]?.station === zero.station) share(covariance, n, at, 2 * j, body, C);
      }
    }
    beam.logWeight[index] = weigh(model, opening, beam.impacts, index * impactCount);
  });
}

/** ln of an opening's weight; writes the probabilities of the impacts given it. */
function weigh(model: RoundModel, opening: Opening, impacts: Float64Array, at: number): number {
  const front = componentAt(model.bodies, opening.bodies[0]);
  const rear = componentAt(model.bodies, opening.bodies[1]);
  let logWeight = front.logPrior + rear.logPrior;
  for (let k = 0; k < model.zeros.length; k++) {
    logWeight += model.zeros[k]?.settings[opening.settings[k] ?? 0]?.logPrior ?? -Infinity;
  }
  const classes = model.shares.length;
  let total = 0;
  for (let c = 0; c < classes; c++) {
    const value =
      (model.shares[c] ?? 0) *
      patternProbability(model, c, 0, front.sides) *
      patternProbability(model, c, 1, rear.sides);
    impacts[at + c] = value;
    total += value;
  }
  for (let c = 0; c < classes; c++) impacts[at + c] = (impacts[at + c] ?? 0) / total;
  logWeight += Math.log(total);
  for (const length of model.lengths) {
    if (length.last > 1) continue;
    const damaged = length.ends.some(([station, side]) =>
      damages(station === 0 ? front.sides : rear.sides, side),
    );
    logWeight += damaged ? length.damaged : length.sound;
  }
  return logWeight;
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
