import { type Explanation, observe, patternWeights, project } from './explanation';
import type { PairModel, RoundModel } from './model';
import type { Source } from './search';

const LOG_2PI = Math.log(2 * Math.PI);

/** Explanations one setup further, not yet worked out: where each comes from, and which hypothesis it adds. */
export interface Candidates {
  count: number;
  from: Int32Array;
  /** Row of the pair's columns. */
  row: Int32Array;
  logWeight: Float64Array;
  /** Hypotheses not even listed, each further behind the best than the depth. */
  skipped: number;
}

class List implements Candidates {
  count = 0;
  skipped = 0;
  from = new Int32Array(256);
  row = new Int32Array(256);
  logWeight = new Float64Array(256);

  add(from: number, row: number, logWeight: number): void {
    if (this.count === this.from.length) {
      const wider = <T extends Int32Array | Float64Array>(old: T, fresh: T): T => (fresh.set(old), fresh);
      this.from = wider(this.from, new Int32Array(2 * this.count));
      this.row = wider(this.row, new Int32Array(2 * this.count));
      this.logWeight = wider(this.logWeight, new Float64Array(2 * this.count));
    }
    this.from[this.count] = from;
    this.row[this.count] = row;
    this.logWeight[this.count] = logWeight;
    this.count++;
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
 * of the two readings. Hypotheses that the left or right reading alone rules out are counted, not listed.
 */
export function candidates(model: RoundModel, source: Source, pair: PairModel, depth: number): Candidates {
  const list = new List();
  const rows = new Float64Array(2 * model.size);
  const patterns = new Float64Array(4);
  // A reading beyond all hypotheses still gets its nearest one: then the reach is widened until some fits.
  for (let reach = 2 * (depth + 6); list.count === 0; reach *= 4) {
    let best = -Infinity;
    for (let index = 0; index < source.count; index++) {
      const item = source.at(index);
      if (pair.first) patternWeights(model, item, pair.station, patterns);
      best = scan(
        list,
        index,
        item.logWeight,
        expected(item, pair, rows),
        pair,
        pair.first ? patterns : null,
        reach,
        depth,
        best,
      );
    }
    if (reach > 1e12) break;
  }
  return list;
}

function scan(
  list: List,
  index: number,
  logWeight: number,
  base: Expected,
  pair: PairModel,
  patterns: Float64Array | null,
  reach: number,
  depth: number,
  bestSoFar: number,
): number {
  const { count, left, right, varLeft, varRight, covariance, logPrior, pattern } = pair.columns;
  const { hasLeft, hasRight, logCeiling } = pair;
  let best = bestSoFar;
  for (let row = 0; row < count; row++) {
    const rL = base.yL - (left[row] ?? 0);
    const vL = base.vL + (varLeft[row] ?? 0);
    if (hasLeft && rL * rL > reach * vL) {
      list.skipped++;
      continue;
    }
    const rR = base.yR - (right[row] ?? 0);
    const vR = base.vR + (varRight[row] ?? 0);
    if (hasRight && rR * rR > reach * vR) {
      list.skipped++;
      continue;
    }
    const prior =
      logWeight + (logPrior[row] ?? 0) + (patterns ? (patterns[pattern[row] ?? 0] ?? -Infinity) : 0);
    if (prior + logCeiling < best - depth) {
      list.skipped++;
      continue;
    }
    let density: number;
    if (!hasLeft) density = -0.5 * (LOG_2PI + Math.log(vR) + (rR * rR) / vR);
    else if (!hasRight) density = -0.5 * (LOG_2PI + Math.log(vL) + (rL * rL) / vL);
    else {
      const c = base.c + (covariance[row] ?? 0);
      const det = vL * vR - c * c;
      density = -LOG_2PI - 0.5 * (Math.log(det) + (vR * rL * rL - 2 * c * rL * rR + vL * rR * rR) / det);
    }
    const weight = prior + density;
    if (weight < best - depth) {
      list.skipped++;
      continue;
    }
    if (weight > best) best = weight;
    list.add(index, row, weight);
  }
  return best;
}
