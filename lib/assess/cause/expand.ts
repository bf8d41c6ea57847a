import { componentAt, type Explanation, innovation, patternProbability, putBody } from './explanation';
import type { PairModel, RoundModel } from './model';
import { emptyExplanation, open } from './openings';

/** Which hypothesis an explanation names for every body and every setting. */
export interface Named {
  logWeight: number;
  /** Index into the bodies, by station. */
  bodies: Int16Array;
  zeroSettings: Int16Array;
  settings: Int16Array;
}

/** The whole state of an explanation, every station's body with it: conditioned on the setups in turn. */
export function expand(model: RoundModel, { logWeight, bodies, zeroSettings, settings }: Named): Explanation {
  const item = emptyExplanation(model);
  open(model, { bodies: [bodies[0] ?? 0, bodies[1] ?? 0], settings: [...zeroSettings] }, item);
  const rows = new Float64Array(2 * model.size);
  model.steps.forEach((pair, step) => {
    if (pair.first) meetBody(model, item, pair, bodies[pair.station] ?? 0);
    const setting = settings[step] ?? 0;
    item.settings[step] = setting;
    condition(item, pair, setting, rows);
  });
  item.logWeight = logWeight;
  return item;
}

/** Puts the body hypothesis of a station that is met for the first time into the state. */
function meetBody(model: RoundModel, item: Explanation, pair: PairModel, index: number): void {
  const body = componentAt(model.bodies, index);
  item.bodies[pair.station] = index;
  let total = 0;
  for (let c = 0; c < item.impacts.length; c++) {
    const value = (item.impacts[c] ?? 0) * patternProbability(model, c, pair.station, body.sides);
    item.impacts[c] = value;
    total += value;
  }
  for (let c = 0; c < item.impacts.length; c++) item.impacts[c] = (item.impacts[c] ?? 0) / total;
  putBody(item, pair.body, body);
}

function condition(item: Explanation, pair: PairModel, index: number, rows: Float64Array): void {
  const n = item.mean.length;
  const { mean, covariance } = item;
  const found = innovation(item, pair, componentAt(pair.settings, index), rows);
  const { left: rL, right: rR, varLeft: vL, varRight: vR, covariance: c } = found;
  const det = pair.hasLeft && pair.hasRight ? vL * vR - c * c : 1;
  const iLL = pair.hasLeft ? (pair.hasRight ? vR / det : 1 / vL) : 0;
  const iRR = pair.hasRight ? (pair.hasLeft ? vL / det : 1 / vR) : 0;
  const iLR = pair.hasLeft && pair.hasRight ? -c / det : 0;
  const eL = pair.hasLeft ? rL : 0;
  const eR = pair.hasRight ? rR : 0;
  const gL = iLL * eL + iLR * eR;
  const gR = iLR * eL + iRR * eR;
  // Stations are met in the order of the state: what lies behind this one is not tied to anything yet.
  const met = pair.body + 2;
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
