import { type Beam, stepPicks, zeroPicks } from './beam';
import { componentAt, type Explanation, innovation, putBody, type State } from './explanation';
import type { PairModel, RoundModel } from './model';
import { open } from './opening-state';

/**
 * The whole state of explanations in a beam (`which`, by their places in it), each station's body with it: conditioned on the setups in turn.
 * Explanations that are alike up to some setup have the same state up to there, so it is worked out once for all of
 * them. They share what room they need, since there may be hundreds.
 */
export function expand(model: RoundModel, beam: Beam, which: readonly number[]): Explanation[] {
  const n = model.size;
  const { count, impactCount, pickCount } = beam;
  const numbers = new Float64Array(which.length * (n + n * n));
  const picks = beam.picks.slice(0, count * pickCount);
  const impacts = beam.impacts.slice(0, beam.groupCount * impactCount);
  const explanations: Explanation[] = [];
  for (let k = 0; k < which.length; k++) {
    const index = which[k] ?? 0;
    const at = k * (n + n * n);
    const pick = index * pickCount;
    const group = (beam.group[index] ?? 0) * impactCount;
    explanations.push({
      logWeight: beam.logWeight[index] ?? -Infinity,
      mean: numbers.subarray(at, at + n),
      covariance: numbers.subarray(at + n, at + n + n * n),
      impacts: impacts.subarray(group, group + impactCount),
      bodies: picks.subarray(pick, pick + zeroPicks(model)),
      zeroSettings: picks.subarray(pick + zeroPicks(model), pick + stepPicks(model)),
      settings: picks.subarray(pick + stepPicks(model), pick + pickCount),
    });
  }
  const ordered = alikeTogether(model, explanations);
  const before = statesBefore(model);
  const last = model.steps.length - 1;
  for (let k = 0; k < ordered.length; k++) {
    const item = ordered[k];
    const [opened] = before;
    if (!item || !opened) break;
    const previous = ordered[k - 1];
    const from = previous ? stepsAlike(model, previous, item) : -1;
    if (from < 0) {
      opened.mean.fill(0);
      opened.covariance.fill(0);
      open(model, item, opened);
    }
    for (let step = Math.max(0, from); step <= last; step++) {
      const pair = model.steps[step];
      const state = before[step];
      const next = step === last ? item : before[step + 1];
      if (!pair || !state || !next) break;
      next.mean.set(state.mean);
      next.covariance.set(state.covariance);
      if (pair.first) putBody(next, pair.body, componentAt(model.bodies, item.bodies[pair.station] ?? 0));
      condition(next, pair, item.settings[step] ?? 0);
    }
    if (last < 0) {
      item.mean.set(opened.mean);
      item.covariance.set(opened.covariance);
    }
  }
  return explanations;
}

/** Room for the state before each setup, used again for every round with a state of the same size. */
const rooms = new Map<number, State[]>();
/** Covariance of the state with the two readings of a setup, one row a side. */
let rows = new Float64Array(64);

function statesBefore(model: RoundModel): State[] {
  const n = model.size;
  if (rows.length < 2 * n) rows = new Float64Array(2 * n);
  let states = rooms.get(n);
  if (!states) rooms.set(n, (states = []));
  while (states.length < Math.max(1, model.steps.length))
    states.push({ mean: new Float64Array(n), covariance: new Float64Array(n * n) });
  return states;
}

/** In an order in which those that are alike up to some setup stand next to one another. */
const alikeTogether = (model: RoundModel, explanations: readonly Explanation[]): Explanation[] =>
  [...explanations].sort((a, b) => {
    const opening = differentOpening(model, a, b);
    if (opening !== 0) return opening;
    for (let step = 0; step < model.steps.length; step++) {
      const difference = differentStep(model, step, a, b);
      if (difference !== 0) return difference;
    }
    return 0;
  });

/** How many setups two explanations say the same of, from the first on; −1 where the zero stations differ already. */
function stepsAlike(model: RoundModel, a: Explanation, b: Explanation): number {
  if (differentOpening(model, a, b) !== 0) return -1;
  let step = 0;
  while (step < model.steps.length && differentStep(model, step, a, b) === 0) step++;
  return Math.min(step, model.steps.length - 1);
}

function differentOpening(model: RoundModel, a: Explanation, b: Explanation): number {
  for (let z = 0; z < 2; z++) {
    const difference = (a.bodies[z] ?? 0) - (b.bodies[z] ?? 0);
    if (difference !== 0) return difference;
  }
  for (let k = 0; k < model.zeros.length; k++) {
    const difference = (a.zeroSettings[k] ?? 0) - (b.zeroSettings[k] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

function differentStep(model: RoundModel, step: number, a: Explanation, b: Explanation): number {
  const station = model.steps[step]?.station ?? 0;
  return (
    (a.bodies[station] ?? 0) - (b.bodies[station] ?? 0) || (a.settings[step] ?? 0) - (b.settings[step] ?? 0)
  );
}

function condition(item: State, pair: PairModel, index: number): void {
  const n = item.mean.length;
  const { mean, covariance } = item;
  // Stations are met in the order of the state: what lies behind this one is not tied to anything yet.
  const met = pair.body + 2;
  const found = innovation(item, pair, componentAt(pair.settings, index), rows, met);
  const { left: rL, right: rR, varLeft: vL, varRight: vR, covariance: c } = found;
  const det = pair.hasLeft && pair.hasRight ? vL * vR - c * c : 1;
  const iLL = pair.hasLeft ? (pair.hasRight ? vR / det : 1 / vL) : 0;
  const iRR = pair.hasRight ? (pair.hasLeft ? vL / det : 1 / vR) : 0;
  const iLR = pair.hasLeft && pair.hasRight ? -c / det : 0;
  const eL = pair.hasLeft ? rL : 0;
  const eR = pair.hasRight ? rR : 0;
  const gL = iLL * eL + iLR * eR;
  const gR = iLR * eL + iRR * eR;
  for (let i = 0; i < met; i++) {
    const a = rows[i] ?? 0;
    const b = rows[n + i] ?? 0;
    if (a === 0 && b === 0) continue;
    mean[i] = (mean[i] ?? 0) + a * gL + b * gR;
    const kL = a * iLL + b * iLR;
    const kR = a * iLR + b * iRR;
    const at = i * n;
    for (let j = 0; j < met; j++)
      covariance[at + j] = (covariance[at + j] ?? 0) - kL * (rows[j] ?? 0) - kR * (rows[n + j] ?? 0);
  }
}
