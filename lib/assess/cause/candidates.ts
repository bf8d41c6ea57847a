import type { Beam } from './beam';
import { componentAt, patternProbability } from './explanation';
import { PATTERNS } from './learned';
import { damages, type PairModel, type RoundModel, sidesOf } from './model';
import { Unlisted } from './unlisted';

const LOG_2PI = Math.log(2 * Math.PI);

/** So far below what is worth listing, in ln, a bound does for the density. */
const FAR_BELOW = 4;

/** Explanations one setup further, not yet worked out: where each comes from, and which hypothesis it adds. */
export interface Candidates {
  count: number;
  from: Int32Array;
  /** Place of the body, and row of the pair's columns. */
  place: Int16Array;
  row: Int16Array;
  logWeight: Float64Array;
  best: number;
  /** ln of a bound on the summed weight of the hypotheses that were not listed. */
  logUnlisted: number;
}

class List implements Candidates {
  count = 0;
  from = new Int32Array(4096);
  place = new Int16Array(4096);
  row = new Int16Array(4096);
  logWeight = new Float64Array(4096);
  best = -Infinity;
  logUnlisted = -Infinity;
  readonly unlisted = new Unlisted();

  begin(reference: number): void {
    this.count = 0;
    this.best = -Infinity;
    this.unlisted.begin(reference);
  }

  add(from: number, place: number, row: number, logWeight: number): void {
    const at = this.count;
    if (at === this.from.length) this.#widen();
    this.from[at] = from;
    this.place[at] = place;
    this.row[at] = row;
    this.logWeight[at] = logWeight;
    this.count = at + 1;
    if (logWeight > this.best) this.best = logWeight;
  }

  #widen(): void {
    const wider = <T extends Int16Array | Int32Array | Float64Array>(old: T, fresh: T): T => (
      fresh.set(old),
      fresh
    );
    this.from = wider(this.from, new Int32Array(2 * this.count));
    this.place = wider(this.place, new Int16Array(2 * this.count));
    this.row = wider(this.row, new Int16Array(2 * this.count));
    this.logWeight = wider(this.logWeight, new Float64Array(2 * this.count));
  }
}

// Rounds are searched one after another, so all of them can use the same room.
const list = new List();
/** ln of each pattern's probability at the station that is met, by group of explanations. */
let patterns = new Float64Array(64);

/** Readings' residual and covariance under an explanation, before any setting (and, at a new station, body). */
interface Expected {
  yL: number;
  yR: number;
  vL: number;
  vR: number;
  c: number;
}

const base: Expected = { yL: 0, yR: 0, vL: 0, vR: 0, c: 0 };

/** Works out `base` for one explanation. */
function expect(beam: Beam, index: number, pair: PairModel): void {
  const { size: n, mean, covariance } = beam;
  const [wa, wb] = pair.weights;
  const m = index * n;
  const p = pair.zeros[0] - 4;
  const q = pair.zeros[1] - 4;
  const pL = index * n * n + p * n;
  const pR = pL + n;
  const qL = index * n * n + q * n;
  const qR = qL + n;
  const aa = wa * wa;
  const ab = wa * wb;
  const bb = wb * wb;
  let yL = pair.y[0] + wa * (mean[m + p] ?? 0) + wb * (mean[m + q] ?? 0);
  let yR = pair.y[1] + wa * (mean[m + p + 1] ?? 0) + wb * (mean[m + q + 1] ?? 0);
  let vL =
    aa * (covariance[pL + p] ?? 0) + 2 * ab * (covariance[pL + q] ?? 0) + bb * (covariance[qL + q] ?? 0);
  let vR =
    aa * (covariance[pR + p + 1] ?? 0) +
    2 * ab * (covariance[pR + q + 1] ?? 0) +
    bb * (covariance[qR + q + 1] ?? 0);
  let c =
    aa * (covariance[pL + p + 1] ?? 0) +
    ab * ((covariance[pL + q + 1] ?? 0) + (covariance[pR + q] ?? 0)) +
    bb * (covariance[qL + q + 1] ?? 0);
  if (!pair.first) {
    const b = n - 2;
    yL -= mean[m + b] ?? 0;
    yR -= mean[m + b + 1] ?? 0;
    const bL = index * n * n + b * n;
    const bR = bL + n;
    vL += (covariance[bL + b] ?? 0) - 2 * (wa * (covariance[pL + b] ?? 0) + wb * (covariance[qL + b] ?? 0));
    vR +=
      (covariance[bR + b + 1] ?? 0) -
      2 * (wa * (covariance[pR + b + 1] ?? 0) + wb * (covariance[qR + b + 1] ?? 0));
    c +=
      (covariance[bL + b + 1] ?? 0) -
      wa * ((covariance[pL + b + 1] ?? 0) + (covariance[pR + b] ?? 0)) -
      wb * ((covariance[qL + b + 1] ?? 0) + (covariance[qR + b] ?? 0));
  }
  base.yL = yL;
  base.yR = yR;
  base.vL = vL + pair.noise[0] + pair.commonNoise;
  base.vR = vR + pair.noise[1] + pair.commonNoise;
  base.c = c + pair.commonNoise;
}

/**
 * Every explanation in `beam` with every hypothesis about the next setup, each weighted by the exact density
 * of the two readings. Hypotheses that cannot come within `depth` of the best are bounded, not listed: with the
 * likeliest explanations first in the beam these are most. What is returned holds until the next call.
 */
export function candidates(model: RoundModel, beam: Beam, pair: PairModel, depth: number): Candidates {
  // A reading beyond all hypotheses still gets its nearest one: then the reach is widened until some fits.
  if (pair.first) patternWeights(model, beam, pair.station);
  for (let reach = 2 * (depth + 6); reach < 1e12; reach *= 4) {
    list.begin(beam.logWeight[0] ?? 0);
    for (let index = 0; index < beam.count; index++) {
      expect(beam, index, pair);
      const group = (beam.group[index] ?? 0) * PATTERNS.length;
      scan(index, beam.logWeight[index] ?? -Infinity, group, pair, reach, depth);
    }
    if (list.count > 0) break;
  }
  list.logUnlisted = list.unlisted.logSum;
  return list;
}

/** ln of each pattern's probability at a station: the impact so far, and the lengths whose last end is here. */
function patternWeights(model: RoundModel, beam: Beam, station: number): void {
  const { groupCount, impactCount, impacts, leader, pickCount, picks } = beam;
  const kinds = PATTERNS.length;
  if (patterns.length < groupCount * kinds) patterns = new Float64Array(2 * groupCount * kinds);
  for (let group = 0; group < groupCount; group++) {
    const at = group * impactCount;
    const to = group * kinds;
    for (let pattern = 0; pattern < kinds; pattern++) {
      let sum = 0;
      for (let c = 0; c < impactCount; c++) {
        sum += (impacts[at + c] ?? 0) * patternProbability(model, c, station, pattern);
      }
      patterns[to + pattern] = Math.log(sum);
    }
    const pick = (leader[group] ?? 0) * pickCount;
    for (const length of model.lengths) {
      if (length.last !== station) continue;
      let elsewhere = false;
      let here = 0;
      for (const [end, side] of length.ends) {
        if (end === station) here |= side === 0 ? 1 : 2;
        else if (damages(componentAt(model.bodies, picks[pick + end] ?? 0).sides, side)) elsewhere = true;
      }
      for (let pattern = 0; pattern < kinds; pattern++) {
        patterns[to + pattern] =
          (patterns[to + pattern] ?? 0) +
          (elsewhere || (sidesOf(pattern) & here) !== 0 ? length.damaged : length.sound);
      }
    }
  }
}

/** ln of the highest density that two readings can have under these variances, both sides or one. */
function ceiling(pair: PairModel): number {
  const setting = pair.hand.setting ** 2;
  const vL = base.vL + setting;
  const vR = base.vR + setting;
  if (!pair.hasLeft) return -0.5 * (LOG_2PI + Math.log(vR));
  if (!pair.hasRight) return -0.5 * (LOG_2PI + Math.log(vL));
  const c = base.c + pair.common * setting;
  return -LOG_2PI - 0.5 * Math.log(vL * vR - c * c);
}

/** One explanation with each body that the setup can meet, and each setting that may go with it. */
function scan(
  index: number,
  logWeight: number,
  group: number,
  pair: PairModel,
  reach: number,
  depth: number,
): void {
  const { unlisted } = list;
  const { places, columns, hasLeft, hasRight } = pair;
  const { left, right, varLeft, varRight, covariance, logPrior, logTail } = columns;
  const { yL, yR, vL, vR, c } = base;
  const top = ceiling(pair);
  /** What is not worth listing lies below. */
  let floor = list.best - depth;
  for (const { sides, from, to, rowFrom, rowTo, lead, mass } of pair.meetings) {
    const start = logWeight + (pair.first ? (patterns[group + sides] ?? -Infinity) : 0);
    if (start === -Infinity) continue;
    for (let place = from; place < to; place++) {
      const prior = start + (places.logPrior[place] ?? -Infinity);
      if (prior + top + lead < floor) {
        unlisted.add(start + top + (places.logTail[place] ?? -Infinity) + mass);
        break;
      }
      // Of the settings that are out of reach below, each has less than this.
      unlisted.add(prior + top + mass - reach / 2);
      const placedL = yL - (places.left[place] ?? 0);
      const placedR = yR - (places.right[place] ?? 0);
      const bL = vL + (places.varLeft[place] ?? 0);
      const bR = vR + (places.varRight[place] ?? 0);
      const bC = c + (places.covariance[place] ?? 0);
      for (let row = rowFrom; row < rowTo; row++) {
        const both = prior + (logPrior[row] ?? 0);
        if (both + top < floor) {
          unlisted.add(prior + top + (logTail[row] ?? 0));
          break;
        }
        const rL = placedL - (left[row] ?? 0);
        const wL = bL + (varLeft[row] ?? 0);
        if (hasLeft && rL * rL > reach * wL) continue;
        const rR = placedR - (right[row] ?? 0);
        const wR = bR + (varRight[row] ?? 0);
        if (hasRight && rR * rR > reach * wR) continue;
        let density: number;
        if (!hasLeft) density = -0.5 * (LOG_2PI + Math.log(wR) + (rR * rR) / wR);
        else if (!hasRight) density = -0.5 * (LOG_2PI + Math.log(wL) + (rL * rL) / wL);
        else {
          const wC = bC + (covariance[row] ?? 0);
          const det = wL * wR - wC * wC;
          const half = (0.5 * (wR * rL * rL - 2 * wC * rL * rR + wL * rR * rR)) / det;
          const bound = both + top - half;
          if (bound < floor - FAR_BELOW) {
            unlisted.add(bound);
            continue;
          }
          density = -LOG_2PI - 0.5 * Math.log(det) - half;
        }
        const weight = both + density;
        if (weight < floor) unlisted.add(weight);
        else {
          list.add(index, place, row, weight);
          floor = list.best - depth;
        }
      }
    }
  }
}
