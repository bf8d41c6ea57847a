import { type Beam, stepPicks } from './beam';
import type { Component } from './components';
import { componentAt, patternProbability } from './explanation';
import { PATTERNS } from './learned';
import type { Candidates } from './listed';
import type { PairModel, RoundModel } from './model';

/** Covariance of the state with the two readings of a pair, one row a side. */
let rows = new Float64Array(64);

/**
 * The explanations after one more setup: for each candidate kept, the state it comes from with the body that is
 * met, conditioned on the two readings.
 */
export function advance(
  model: RoundModel,
  from: Beam,
  found: Candidates,
  order: readonly number[],
  step: number,
  into: Beam,
): void {
  const pair = model.steps[step];
  if (!pair) throw new RangeError(`There is no step ${step} among ${model.steps.length}.`);
  into.begin(model, order.length);
  if (rows.length < 2 * into.size) rows = new Float64Array(2 * into.size);
  const { size, pickCount } = into;
  const stepAt = stepPicks(model) + step;
  const last = model.steps.length - 1;
  const groups = new NextGroups(model, from, into, pair);
  for (let k = 0; k < order.length; k++) {
    const index = order[k] ?? 0;
    const parent = found.from[index] ?? 0;
    into.logWeight[k] = (found.logWeight[index] ?? -Infinity) - (from.outlook[parent] ?? 0);
    into.outlook[k] = 0;
    into.kind[k] = found.kind[index] ?? 0;
    for (let i = 0; i < pickCount; i++) {
      into.picks[k * pickCount + i] = from.picks[parent * pickCount + i] ?? 0;
    }
    if (pair.first) {
      const body = pair.places.body[found.place[index] ?? 0] ?? 0;
      into.picks[k * pickCount + pair.station] = body;
      into.group[k] = groups.of(from.group[parent] ?? 0, componentAt(model.bodies, body).sides, k);
    } else into.group[k] = groups.of(from.group[parent] ?? 0, 0, k);
    const setting = pair.columns.setting[found.row[index] ?? 0] ?? 0;
    into.picks[k * pickCount + stepAt] = setting;
    // Nothing is read after the last setup: there the picks are all that is asked for.
    if (step === last) continue;
    copy(from.mean, parent * size, into.mean, k * size, size);
    copy(from.covariance, parent * size * size, into.covariance, k * size * size, size * size);
    if (pair.first)
      meetBody(into, k, componentAt(model.bodies, into.picks[k * pickCount + pair.station] ?? 0));
    condition(into, k, pair, setting);
  }
}

function copy(from: Float64Array, at: number, into: Float64Array, to: number, count: number): void {
  for (let i = 0; i < count; i++) into[to + i] = from[at + i] ?? 0;
}

/** Groups after one more setup: at a station that is met for the first time they part by its pattern. */
class NextGroups {
  readonly #model: RoundModel;
  readonly #from: Beam;
  readonly #into: Beam;
  readonly #pair: PairModel;
  readonly #known: Int32Array;

  constructor(model: RoundModel, from: Beam, into: Beam, pair: PairModel) {
    this.#model = model;
    this.#from = from;
    this.#into = into;
    this.#pair = pair;
    this.#known = new Int32Array(from.groupCount * PATTERNS.length).fill(-1);
  }

  /** The group that explanation `k` belongs to: of those that were in group `parent`, those with this pattern. */
  of(parent: number, pattern: number, k: number): number {
    const key = parent * PATTERNS.length + pattern;
    const known = this.#known[key] ?? -1;
    if (known >= 0) return known;
    const group = this.#into.beginGroup(k);
    this.#known[key] = group;
    const { impactCount, impacts } = this.#into;
    copy(this.#from.impacts, parent * impactCount, impacts, group * impactCount, impactCount);
    if (this.#pair.first) this.#weigh(group * impactCount, pattern);
    return group;
  }

  /** Weighs the impacts by the pattern that is met. */
  #weigh(start: number, pattern: number): void {
    const { impactCount, impacts } = this.#into;
    let total = 0;
    for (let at = start; at < start + impactCount; at++) {
      const value =
        (impacts[at] ?? 0) * patternProbability(this.#model, at - start, this.#pair.station, pattern);
      impacts[at] = value;
      total += value;
    }
    for (let at = start; at < start + impactCount; at++) impacts[at] = (impacts[at] ?? 0) / total;
  }
}

/** Puts the body hypothesis of a station that is met for the first time into the state. */
function meetBody(beam: Beam, k: number, body: Component): void {
  const { size, mean, covariance } = beam;
  const b = size - 2;
  const start = k * size * size;
  mean[k * size + b] = body.left;
  mean[k * size + b + 1] = body.right;
  for (let i = 0; i < b; i++) {
    covariance[start + b * size + i] = 0;
    covariance[start + (b + 1) * size + i] = 0;
    covariance[start + i * size + b] = 0;
    covariance[start + i * size + b + 1] = 0;
  }
  covariance[start + b * size + b] = body.varLeft;
  covariance[start + (b + 1) * size + b + 1] = body.varRight;
  covariance[start + b * size + b + 1] = body.covariance;
  covariance[start + (b + 1) * size + b] = body.covariance;
}

function condition(beam: Beam, k: number, pair: PairModel, index: number): void {
  const setting = componentAt(pair.settings, index);
  const { size: n, mean, covariance } = beam;
  const m = k * n;
  const C = k * n * n;
  const b = n - 2;
  const p = pair.zeros[0] - 4;
  const q = pair.zeros[1] - 4;
  const [wa, wb] = pair.weights;
  for (let i = 0; i < n; i++) {
    for (let s = 0; s < 2; s++) {
      rows[s * n + i] =
        (covariance[C + (b + s) * n + i] ?? 0) -
        wa * (covariance[C + (p + s) * n + i] ?? 0) -
        wb * (covariance[C + (q + s) * n + i] ?? 0);
    }
  }
  const rL =
    pair.y[0] - setting.left - (mean[m + b] ?? 0) + wa * (mean[m + p] ?? 0) + wb * (mean[m + q] ?? 0);
  const rR =
    pair.y[1] -
    setting.right -
    (mean[m + b + 1] ?? 0) +
    wa * (mean[m + p + 1] ?? 0) +
    wb * (mean[m + q + 1] ?? 0);
  const vL =
    (rows[b] ?? 0) -
    wa * (rows[p] ?? 0) -
    wb * (rows[q] ?? 0) +
    pair.noise[0] +
    pair.commonNoise +
    setting.varLeft;
  const vR =
    (rows[n + b + 1] ?? 0) -
    wa * (rows[n + p + 1] ?? 0) -
    wb * (rows[n + q + 1] ?? 0) +
    pair.noise[1] +
    pair.commonNoise +
    setting.varRight;
  const c =
    (rows[b + 1] ?? 0) -
    wa * (rows[p + 1] ?? 0) -
    wb * (rows[q + 1] ?? 0) +
    pair.commonNoise +
    setting.covariance;
  const { hasLeft, hasRight } = pair;
  const det = hasLeft && hasRight ? vL * vR - c * c : 1;
  const iLL = hasLeft ? (hasRight ? vR / det : 1 / vL) : 0;
  const iRR = hasRight ? (hasLeft ? vL / det : 1 / vR) : 0;
  const iLR = hasLeft && hasRight ? -c / det : 0;
  const eL = hasLeft ? rL : 0;
  const eR = hasRight ? rR : 0;
  const gL = iLL * eL + iLR * eR;
  const gR = iLR * eL + iRR * eR;
  for (let i = 0; i < n; i++) {
    const a = rows[i] ?? 0;
    const z = rows[n + i] ?? 0;
    mean[m + i] = (mean[m + i] ?? 0) + a * gL + z * gR;
    const kL = a * iLL + z * iLR;
    const kR = a * iLR + z * iRR;
    const at = C + i * n;
    for (let j = 0; j < n; j++) {
      covariance[at + j] = (covariance[at + j] ?? 0) - kL * (rows[j] ?? 0) - kR * (rows[n + j] ?? 0);
    }
  }
}
