import { type Explanation, observe, patternWeights, project } from './explanation';
import type { PairModel, RoundModel } from './model';
import type { Source } from './search';

const LOG_2PI = Math.log(2 * Math.PI);

/** Explanations one setup further, not yet worked out: where each comes from, and which hypothesis it adds. */
export interface Candidates {
  count: number;
  from: Int32Array;
  /** Block and row of the pair's columns. */
  block: Int16Array;
  row: Int16Array;
  logWeight: Float64Array;
  /** ln of a bound on the summed weight of the hypotheses that were not listed. */
  logUnlisted: number;
}

class List implements Candidates {
  count = 0;
  from = new Int32Array(256);
  block = new Int16Array(256);
  row = new Int16Array(256);
  logWeight = new Float64Array(256);
  best = -Infinity;
  /** Bound on what was not listed, relative to exp(reference). */
  private unlisted = 0;
  private reference = -Infinity;

  add(from: number, block: number, row: number, logWeight: number): void {
    if (this.count === this.from.length) {
      const wider = <T extends Int16Array | Int32Array | Float64Array>(old: T, fresh: T): T => (
        fresh.set(old),
        fresh
      );
      this.from = wider(this.from, new Int32Array(2 * this.count));
      this.block = wider(this.block, new Int16Array(2 * this.count));
      this.row = wider(this.row, new Int16Array(2 * this.count));
      this.logWeight = wider(this.logWeight, new Float64Array(2 * this.count));
    }
    this.from[this.count] = from;
    this.block[this.count] = block;
    this.row[this.count] = row;
    this.logWeight[this.count] = logWeight;
    this.count++;
    if (logWeight > this.best) this.best = logWeight;
  }

  skip(logWeight: number, prior: number): void {
    if (this.reference === -Infinity) this.reference = logWeight;
    this.unlisted += Math.exp(Math.min(logWeight - this.reference, 600)) * prior;
  }

  get logUnlisted(): number {
    return Math.log(this.unlisted) + this.reference;
  }
}

/** Readings' residual and covariance under an explanation, before any setting (and, at a new station, body). */
interface Expected {
  yL: number;
  yR: number;
  vL: number;
  vR: number;
  c: number;
}

function expected(item: Explanation, pair: PairModel, rows: Float64Array): Expected {
  const n = item.mean.length;
  observe(item, pair, rows);
  return {
    yL: pair.y[0] - project(item.mean, 0, pair, 0),
    yR: pair.y[1] - project(item.mean, 0, pair, 1),
    vL: project(rows, 0, pair, 0) + pair.noise[0] + pair.commonNoise,
    vR: project(rows, n, pair, 1) + pair.noise[1] + pair.commonNoise,
    c: project(rows, 0, pair, 1) + pair.commonNoise,
  };
}

/**
 * Every explanation in `source` with every hypothesis about the next setup, each weighted by the exact density
 * of the two readings. Hypotheses that cannot come within `depth` of the best are bounded, not listed.
 */
export function candidates(model: RoundModel, source: Source, pair: PairModel, depth: number): Candidates {
  const rows = new Float64Array(2 * model.size);
  const patterns = new Float64Array(4);
  let list = new List();
  // A reading beyond all hypotheses still gets its nearest one: then the reach is widened until some fits.
  for (let reach = 2 * (depth + 6); list.count === 0 && reach < 1e12; reach *= 4) {
    list = new List();
    for (let index = 0; index < source.count; index++) {
      const item = source.at(index);
      if (pair.first) patternWeights(model, item, pair.station, patterns);
      scan(list, index, item.logWeight, expected(item, pair, rows), pair, patterns, reach, depth);
    }
  }
  return list;
}

/** ln of the highest density that two readings can have under these variances, both sides or one. */
function ceiling(pair: PairModel, base: Expected): number {
  const setting = pair.hand.setting ** 2;
  const vL = base.vL + setting;
  const vR = base.vR + setting;
  if (!pair.hasLeft) return -0.5 * (LOG_2PI + Math.log(vR));
  if (!pair.hasRight) return -0.5 * (LOG_2PI + Math.log(vL));
  const c = base.c + pair.common * setting;
  return -LOG_2PI - 0.5 * Math.log(vL * vR - c * c);
}

function scan(
  list: List,
  index: number,
  logWeight: number,
  base: Expected,
  pair: PairModel,
  patterns: Float64Array,
  reach: number,
  depth: number,
): void {
  const { left, right, varLeft, varRight, covariance, logPrior, tail } = pair.columns;
  const { hasLeft, hasRight } = pair;
  const top = ceiling(pair, base);
  for (let b = 0; b < pair.blocks.length; b++) {
    const block = pair.blocks[b];
    if (!block) break;
    const start = logWeight + block.logPrior + (pair.first ? (patterns[block.sides] ?? -Infinity) : 0);
    const mass =
      block.to - block.from === 1 ? Math.exp(logPrior[block.from] ?? -Infinity) : (tail[block.from] ?? 0);
    if (start + top + (logPrior[block.from] ?? -Infinity) < list.best - depth) {
      list.skip(start + top, mass);
      continue;
    }
    list.skip(start + top - reach / 2, mass);
    const yL = base.yL - block.left;
    const yR = base.yR - block.right;
    const bL = base.vL + block.varLeft;
    const bR = base.vR + block.varRight;
    const bC = base.c + block.covariance;
    for (let row = block.from; row < block.to; row++) {
      const prior = start + (logPrior[row] ?? 0);
      if (prior + top < list.best - depth) {
        list.skip(start + top, tail[row] ?? 0);
        break;
      }
      const rL = yL - (left[row] ?? 0);
      const vL = bL + (varLeft[row] ?? 0);
      if (hasLeft && rL * rL > reach * vL) continue;
      const rR = yR - (right[row] ?? 0);
      const vR = bR + (varRight[row] ?? 0);
      if (hasRight && rR * rR > reach * vR) continue;
      let density: number;
      if (!hasLeft) density = -0.5 * (LOG_2PI + Math.log(vR) + (rR * rR) / vR);
      else if (!hasRight) density = -0.5 * (LOG_2PI + Math.log(vL) + (rL * rL) / vL);
      else {
        const c = bC + (covariance[row] ?? 0);
        const det = vL * vR - c * c;
        density = -LOG_2PI - 0.5 * (Math.log(det) + (vR * rL * rL - 2 * c * rL * rR + vL * rR * rR) / det);
      }
      const weight = prior + density;
      if (weight < list.best - depth) list.skip(weight, 1);
      else list.add(index, b, row, weight);
    }
  }
}
