import { type Beam, stepPicks, zeroPicks } from './beam';
import { componentAt, type Explanation, innovation, putBody } from './explanation';
import type { PairModel, RoundModel } from './model';
import { open } from './openings';

/**
 * The whole state of every explanation in a beam, each station's body with it: conditioned on the setups in turn.
 * They share what room they need, since there may be hundreds.
 */
export function expand(model: RoundModel, beam: Beam): Explanation[] {
  const n = model.size;
  const { count, impactCount, pickCount } = beam;
  const numbers = new Float64Array(count * (n + n * n));
  const picks = beam.picks.slice(0, count * pickCount);
  const impacts = beam.impacts.slice(0, beam.groupCount * impactCount);
  const rows = new Float64Array(2 * n);
  return Array.from({ length: count }, (_, index) => {
    const at = index * (n + n * n);
    const pick = index * pickCount;
    const group = (beam.group[index] ?? 0) * impactCount;
    const item: Explanation = {
      logWeight: beam.logWeight[index] ?? -Infinity,
      mean: numbers.subarray(at, at + n),
      covariance: numbers.subarray(at + n, at + n + n * n),
      impacts: impacts.subarray(group, group + impactCount),
      bodies: picks.subarray(pick, pick + zeroPicks(model)),
      zeroSettings: picks.subarray(pick + zeroPicks(model), pick + stepPicks(model)),
      settings: picks.subarray(pick + stepPicks(model), pick + pickCount),
    };
    open(model, item, item);
    for (let step = 0; step < model.steps.length; step++) {
      const pair = model.steps[step];
      if (!pair) break;
      if (pair.first) putBody(item, pair.body, componentAt(model.bodies, item.bodies[pair.station] ?? 0));
      condition(item, pair, item.settings[step] ?? 0, rows);
    }
    return item;
  });
}

function condition(item: Explanation, pair: PairModel, index: number, rows: Float64Array): void {
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
