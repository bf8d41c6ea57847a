import { patternIndex } from './components';
import type { Component } from './components';
import { PATTERNS } from './learned';
import { damages, type PairModel, type RoundModel } from './model';

/** One explanation of a whole round: what every setting and every station is taken to be, and what follows. */
export interface Explanation {
  /** ln of prior times evidence so far. */
  logWeight: number;
  mean: Float64Array;
  covariance: Float64Array;
  /** P(impact class | this explanation so far). */
  impacts: Float64Array;
  /** Index into `model.bodies` by station. */
  bodies: Int16Array;
  /** Index into the zero setup's settings, by zero setup. */
  zeroSettings: Int16Array;
  /** Index into the pair's settings, in the order of `model.pairs`. */
  settings: Int16Array;
}

export interface SearchResult {
  /** Normalised: weights sum to one. */
  explanations: { weight: number; explanation: Explanation }[];
  logEvidence: number;
  /** Bound on the posterior probability of all explanations that were left out. */
  leftOut: number;
}

export interface SearchEffort {
  /** Explanations less likely than the best by more than this, in ln, are left out. */
  depth: number;
  /** At most so many are kept at any step. */
  breadth: number;
}

const LOG_2PI = Math.log(2 * Math.PI);

interface Candidate {
  from: Explanation;
  body: number;
  setting: number;
  logWeight: number;
  pattern: number;
}

/**
 * Sums over the explanations of a round: a mis-set or ordinary setting for each setup, a damaged or sound
 * body for each station. Each explanation is Gaussian, so its marginal likelihood is exact; the stations are
 * taken in turn, each setup being one two-dimensional update of the state, and explanations that fell behind
 * are dropped with a bound on what they could still have become.
 */
export function search(model: RoundModel, effort: SearchEffort): SearchResult {
  let beam = openings(model);
  const ceilings = remainingCeilings(model);
  const left: number[] = [];
  let step = 0;
  model.pairs.forEach((pairs, station) => {
    pairs.forEach((pair, index) => {
      const candidates =
        index === 0 ? firstSetup(model, beam, station, pair, effort.depth) : laterSetup(beam, pair, effort.depth);
      const { kept, dropped } = prune(candidates, effort);
      const ceiling = ceilings[step + 1] ?? 0;
      if (dropped > 0) left.push(Math.log(dropped.valueOf()) + kept.best + ceiling);
      beam = kept.list.map((candidate) => advance(model, candidate, pair, index === 0, step));
      step++;
    });
  });
  const best = beam.reduce((top, item) => Math.max(top, item.logWeight), -Infinity);
  let total = 0;
  for (const item of beam) total += Math.exp(item.logWeight - best);
  const logEvidence = best + Math.log(total);
  const missed = left.reduce((sum, value) => sum + Math.exp(value - logEvidence), 0);
  return {
    explanations: beam
      .map((explanation) => ({ weight: Math.exp(explanation.logWeight - logEvidence), explanation }))
      .sort((a, b) => b.weight - a.weight),
    logEvidence,
    leftOut: missed / (1 + missed),
  };
}

/** ln of the most that the setups from each step on can add. */
function remainingCeilings(model: RoundModel): number[] {
  const steps = model.pairs.flat();
  const ceilings = new Array<number>(steps.length + 1).fill(0);
  for (let i = steps.length - 1; i >= 0; i--) ceilings[i] = (ceilings[i + 1] ?? 0) + (steps[i]?.logCeiling ?? 0);
  return ceilings;
}

/**
 * Explanations of the zero stations, which have no reading of their own to judge them by: nothing wrong, one
 * thing wrong in fine bands, two things wrong in broad ones.
 */
function openings(model: RoundModel): Explanation[] {
  const none = model.zeros.map(() => 0);
  const list: Explanation[] = [open(model, [0, 0], none)];
  const singles: { bodies: [number, number]; settings: number[]; broad: boolean; who: number }[] = [];
  model.zeros.forEach((zero, k) => {
    for (let i = 1; i < zero.settings.length; i++) {
      const settings = [...none];
      settings[k] = i;
      singles.push({ bodies: [0, 0], settings, broad: i >= zero.broadFrom, who: k });
    }
  });
  for (const z of [0, 1] as const) {
    for (let i = 1; i < model.bodies.length; i++) {
      const bodies: [number, number] = z === 0 ? [i, 0] : [0, i];
      singles.push({ bodies, settings: none, broad: i >= model.bodyBroadFrom, who: -1 - z });
    }
  }
  for (const single of singles) if (!single.broad) list.push(open(model, single.bodies, single.settings));
  const broad = singles.filter((single) => single.broad);
  broad.forEach((first, i) => {
    for (const second of broad.slice(i + 1)) {
      if (first.who === second.who) continue;
      const settings = first.settings.map((value, k) => value || (second.settings[k] ?? 0));
      const bodies: [number, number] = [first.bodies[0] || second.bodies[0], first.bodies[1] || second.bodies[1]];
      list.push(open(model, bodies, settings));
    }
  });
  return list;
}

const component = (list: Component[], index: number): Component => {
  const found = list[index];
  if (!found) throw new RangeError(`There is no hypothesis ${index} among ${list.length}.`);
  return found;
};

function open(model: RoundModel, bodies: [number, number], settings: number[]): Explanation {
  const n = model.size;
  const mean = new Float64Array(n);
  const covariance = new Float64Array(n * n);
  const put = (row: number, column: number, value: number): void => {
    covariance[row * n + column] = value;
    covariance[column * n + row] = value;
  };
  const stationBodies = new Int16Array(model.frame.stations.length);
  const patterns: number[] = [];
  let logWeight = 0;
  bodies.forEach((index, z) => {
    const body = component(model.bodies, index);
    stationBodies[z] = index;
    patterns.push(PATTERNS.indexOf(body.pattern));
    logWeight += body.logPrior;
    const at = 2 * z;
    mean[at] = body.left;
    mean[at + 1] = body.right;
    put(at, at, body.varLeft);
    put(at + 1, at + 1, body.varRight);
    put(at, at + 1, body.covariance);
  });
  model.zeros.forEach((zero, k) => {
    const setting = component(zero.settings, settings[k] ?? 0);
    logWeight += setting.logPrior;
    const body = component(model.bodies, bodies[zero.station]);
    const at = zero.error;
    const own = 2 * zero.station;
    mean[at] = body.left + setting.left;
    mean[at + 1] = body.right + setting.right;
    put(at, at, body.varLeft + setting.varLeft);
    put(at + 1, at + 1, body.varRight + setting.varRight);
    put(at, at + 1, body.covariance + setting.covariance);
    // A zero setup's error contains the body, which the other setups at this station share.
    const sharing = [own, ...model.zeros.slice(0, k).filter((z) => z.station === zero.station).map((z) => z.error)];
    for (const other of sharing) {
      put(at, other, body.varLeft);
      put(at + 1, other + 1, body.varRight);
      put(at, other + 1, body.covariance);
      put(at + 1, other, body.covariance);
    }
  });
  const impacts = new Float64Array(model.logShares.length);
  let total = 0;
  model.logShares.forEach((share, c) => {
    const value = Math.exp(share + logPattern(model, c, 0, patterns[0] ?? 0) + logPattern(model, c, 1, patterns[1] ?? 0));
    impacts[c] = value;
    total += value;
  });
  for (let c = 0; c < impacts.length; c++) impacts[c] = (impacts[c] ?? 0) / total;
  logWeight += Math.log(total);
  for (const length of model.lengths) {
    if (length.last > 1) continue;
    const damaged = length.ends.some(([station, side]) => damages(patterns[station] ?? 0, side));
    logWeight += damaged ? length.damaged : length.sound;
  }
  return {
    logWeight,
    mean,
    covariance,
    impacts,
    bodies: stationBodies,
    zeroSettings: Int16Array.from(settings),
    settings: new Int16Array(model.pairs.flat().length),
  };
}

const logPattern = (model: RoundModel, impact: number, station: number, pattern: number): number =>
  model.logPatterns[impact]?.[station]?.[pattern] ?? -Infinity;

/** ln of each pattern's probability at this station: the impact so far, and the lengths that end here. */
function patternWeights(model: RoundModel, item: Explanation, station: number): number[] {
  return PATTERNS.map((_, pattern) => {
    let sum = 0;
    for (let c = 0; c < item.impacts.length; c++) {
      sum += (item.impacts[c] ?? 0) * Math.exp(logPattern(model, c, station, pattern));
    }
    let log = Math.log(sum);
    for (const length of model.lengths) {
      if (length.last !== station) continue;
      const damaged = length.ends.some(([end, side]) =>
        damages(end === station ? pattern : PATTERNS.indexOf(component(model.bodies, item.bodies[end] ?? 0).pattern), side),
      );
      log += damaged ? length.damaged : length.sound;
    }
    return log;
  });
}

/** Mean and covariance of what the datum takes off a reading of this pair (before its body is added). */
function carried(item: Explanation, pair: PairModel): [number, number, number, number, number] {
  const n = item.mean.length;
  const [p, q] = pair.zeros;
  const [wa, wb] = pair.weights;
  const { mean: m, covariance: C } = item;
  const at = (i: number, j: number): number => C[i * n + j] ?? 0;
  const joint = (s: number, t: number): number =>
    wa * wa * at(p + s, p + t) + wa * wb * (at(p + s, q + t) + at(q + s, p + t)) + wb * wb * at(q + s, q + t);
  return [
    wa * (m[p] ?? 0) + wb * (m[q] ?? 0),
    wa * (m[p + 1] ?? 0) + wb * (m[q + 1] ?? 0),
    joint(0, 0),
    joint(1, 1),
    joint(0, 1),
  ];
}

/** ln density of the pair's readings given residuals and their covariance; a side without readings drops out. */
function logDensity(pair: PairModel, rL: number, rR: number, vL: number, vR: number, c: number): number {
  if (pair.pair.n[0] === 0) return -0.5 * (LOG_2PI + Math.log(vR) + (rR * rR) / vR);
  if (pair.pair.n[1] === 0) return -0.5 * (LOG_2PI + Math.log(vL) + (rL * rL) / vL);
  const det = vL * vR - c * c;
  return -LOG_2PI - 0.5 * (Math.log(det) + (vR * rL * rL - 2 * c * rL * rR + vL * rR * rR) / det);
}

function firstSetup(model: RoundModel, beam: Explanation[], station: number, pair: PairModel, depth: number): Candidate[] {
  const candidates: Candidate[] = [];
  const reach = 2 * (depth + 4);
  const hasLeft = pair.pair.n[0] > 0;
  const hasRight = pair.pair.n[1] > 0;
  let best = -Infinity;
  for (const item of beam) {
    const patterns = patternWeights(model, item, station);
    const [uL, uR, sL, sR, sC] = carried(item, pair);
    const baseL = sL + pair.noise[0] + pair.commonNoise;
    const baseR = sR + pair.noise[1] + pair.commonNoise;
    const baseC = sC + pair.commonNoise;
    const yL = pair.y[0] + uL;
    const yR = pair.y[1] + uR;
    for (let b = 0; b < model.bodyBroadFrom; b++) {
      const body = component(model.bodies, b);
      const pattern = PATTERNS.indexOf(body.pattern);
      const logBody = item.logWeight + body.logPrior + (patterns[pattern] ?? -Infinity);
      if (logBody + pair.logCeiling < best - depth) continue;
      const bL = yL - body.left;
      const bR = yR - body.right;
      const bvL = baseL + body.varLeft;
      const bvR = baseR + body.varRight;
      for (let g = 0; g < pair.settings.length; g++) {
        const setting = component(pair.settings, g);
        const rL = bL - setting.left;
        const vL = bvL + setting.varLeft;
        if (hasLeft && rL * rL > reach * vL) continue;
        const rR = bR - setting.right;
        const vR = bvR + setting.varRight;
        if (hasRight && rR * rR > reach * vR) continue;
        const prior = logBody + setting.logPrior;
        if (prior + pair.logCeiling < best - depth) continue;
        const logWeight = prior + logDensity(pair, rL, rR, vL, vR, baseC + body.covariance + setting.covariance);
        if (logWeight < best - depth) continue;
        if (logWeight > best) best = logWeight;
        candidates.push({ from: item, body: b, setting: g, logWeight, pattern });
      }
    }
  }
  // Readings that no hypothesis reaches (a wild value) still get their nearest explanation.
  if (candidates.length === 0) return nearest(model, beam, station, pair);
  return candidates;
}

function nearest(model: RoundModel, beam: Explanation[], station: number, pair: PairModel): Candidate[] {
  return beam.flatMap((item) => {
    const patterns = patternWeights(model, item, station);
    const [uL, uR, sL, sR, sC] = carried(item, pair);
    return model.bodies.flatMap((body, b) =>
      pair.settings.map((setting, g) => {
        const pattern = PATTERNS.indexOf(body.pattern);
        return {
          from: item,
          body: b,
          setting: g,
          pattern,
          logWeight:
            item.logWeight +
            body.logPrior +
            (patterns[pattern] ?? -Infinity) +
            setting.logPrior +
            logDensity(
              pair,
              pair.y[0] + uL - body.left - setting.left,
              pair.y[1] + uR - body.right - setting.right,
              sL + pair.noise[0] + pair.commonNoise + body.varLeft + setting.varLeft,
              sR + pair.noise[1] + pair.commonNoise + body.varRight + setting.varRight,
              sC + pair.commonNoise + body.covariance + setting.covariance,
            ),
        };
      }),
    );
  });
}

function laterSetup(beam: Explanation[], pair: PairModel, depth: number): Candidate[] {
  const candidates: Candidate[] = [];
  let best = -Infinity;
  for (const item of beam) {
    const n = item.mean.length;
    const [uL, uR] = carried(item, pair);
    const rows = observe(item, pair);
    const at = (i: number, row: Float64Array): number => project(row, pair, i);
    const sL = at(0, rows[0]) + pair.noise[0] + pair.commonNoise;
    const sR = at(1, rows[1]) + pair.noise[1] + pair.commonNoise;
    const sC = at(1, rows[0]) + pair.commonNoise;
    const yL = pair.y[0] + uL - (item.mean[pair.body] ?? 0);
    const yR = pair.y[1] + uR - (item.mean[pair.body + 1] ?? 0);
    if (n === 0) continue;
    for (let g = 0; g < pair.settings.length; g++) {
      const setting = component(pair.settings, g);
      const logWeight =
        item.logWeight +
        setting.logPrior +
        logDensity(pair, yL - setting.left, yR - setting.right, sL + setting.varLeft, sR + setting.varRight, sC + setting.covariance);
      if (logWeight < best - depth) continue;
      if (logWeight > best) best = logWeight;
      candidates.push({ from: item, body: -1, setting: g, logWeight, pattern: -1 });
    }
  }
  return candidates;
}

function prune(candidates: Candidate[], effort: SearchEffort): { kept: { list: Candidate[]; best: number }; dropped: number } {
  let best = -Infinity;
  for (const candidate of candidates) if (candidate.logWeight > best) best = candidate.logWeight;
  let list = candidates.filter((candidate) => candidate.logWeight >= best - effort.depth);
  let dropped = 0;
  for (const candidate of candidates) {
    if (candidate.logWeight < best - effort.depth) dropped += Math.exp(candidate.logWeight - best);
  }
  if (list.length > effort.breadth) {
    list.sort((a, b) => b.logWeight - a.logWeight);
    for (const candidate of list.slice(effort.breadth)) dropped += Math.exp(candidate.logWeight - best);
    list = list.slice(0, effort.breadth);
  }
  return { kept: { list, best }, dropped };
}

/** Covariance of the state with the two readings of a pair: one row a side. */
function observe(item: Explanation, pair: PairModel): [Float64Array, Float64Array] {
  const n = item.mean.length;
  const C = item.covariance;
  const [p, q] = pair.zeros;
  const [wa, wb] = pair.weights;
  const row = (s: 0 | 1): Float64Array => {
    const out = new Float64Array(n);
    const b = (pair.body + s) * n;
    const e = (p + s) * n;
    const f = (q + s) * n;
    for (let i = 0; i < n; i++) out[i] = (C[b + i] ?? 0) - wa * (C[e + i] ?? 0) - wb * (C[f + i] ?? 0);
    return out;
  };
  return [row(0), row(1)];
}

/** The observation's own combination of a row: body less what the datum carries. */
function project(row: Float64Array, pair: PairModel, s: number): number {
  return (row[pair.body + s] ?? 0) - pair.weights[0] * (row[pair.zeros[0] + s] ?? 0) - pair.weights[1] * (row[pair.zeros[1] + s] ?? 0);
}

/** The explanation after one more setup: the state conditioned on its two readings. */
function advance(model: RoundModel, candidate: Candidate, pair: PairModel, first: boolean, step: number): Explanation {
  const { from } = candidate;
  const item: Explanation = {
    logWeight: candidate.logWeight,
    mean: from.mean.slice(),
    covariance: from.covariance.slice(),
    impacts: from.impacts,
    bodies: from.bodies,
    zeroSettings: from.zeroSettings,
    settings: from.settings.slice(),
  };
  const n = model.size;
  if (first) {
    const body = component(model.bodies, candidate.body);
    item.bodies = from.bodies.slice();
    item.bodies[pair.station] = candidate.body;
    item.impacts = from.impacts.slice();
    let total = 0;
    for (let c = 0; c < item.impacts.length; c++) {
      const value = (from.impacts[c] ?? 0) * Math.exp(logPattern(model, c, pair.station, candidate.pattern));
      item.impacts[c] = value;
      total += value;
    }
    for (let c = 0; c < item.impacts.length; c++) item.impacts[c] = (item.impacts[c] ?? 0) / total;
    const b = pair.body;
    item.mean[b] = body.left;
    item.mean[b + 1] = body.right;
    item.covariance[b * n + b] = body.varLeft;
    item.covariance[(b + 1) * n + b + 1] = body.varRight;
    item.covariance[b * n + b + 1] = body.covariance;
    item.covariance[(b + 1) * n + b] = body.covariance;
  }
  item.settings[step] = candidate.setting;
  condition(item, pair, component(pair.settings, candidate.setting));
  return item;
}

function condition(item: Explanation, pair: PairModel, setting: Component): void {
  const n = item.mean.length;
  const [rowL, rowR] = observe(item, pair);
  const [uL, uR] = carried(item, pair);
  const rL = pair.y[0] + uL - (item.mean[pair.body] ?? 0) - setting.left;
  const rR = pair.y[1] + uR - (item.mean[pair.body + 1] ?? 0) - setting.right;
  const vL = project(rowL, pair, 0) + pair.noise[0] + pair.commonNoise + setting.varLeft;
  const vR = project(rowR, pair, 1) + pair.noise[1] + pair.commonNoise + setting.varRight;
  const c = project(rowL, pair, 1) + pair.commonNoise + setting.covariance;
  let iLL: number;
  let iRR: number;
  let iLR: number;
  if (pair.pair.n[0] === 0) [iLL, iRR, iLR] = [0, 1 / vR, 0];
  else if (pair.pair.n[1] === 0) [iLL, iRR, iLR] = [1 / vL, 0, 0];
  else {
    const det = vL * vR - c * c;
    [iLL, iRR, iLR] = [vR / det, vL / det, -c / det];
  }
  const eL = iLL === 0 ? 0 : rL;
  const eR = iRR === 0 ? 0 : rR;
  const gL = iLL * eL + iLR * eR;
  const gR = iLR * eL + iRR * eR;
  const { mean, covariance } = item;
  for (let i = 0; i < n; i++) {
    const a = rowL[i] ?? 0;
    const b = rowR[i] ?? 0;
    mean[i] = (mean[i] ?? 0) + a * gL + b * gR;
    const kL = a * iLL + b * iLR;
    const kR = a * iLR + b * iRR;
    if (kL === 0 && kR === 0) continue;
    for (let j = 0; j < n; j++) {
      covariance[i * n + j] = (covariance[i * n + j] ?? 0) - kL * (rowL[j] ?? 0) - kR * (rowR[j] ?? 0);
    }
  }
}

export { patternIndex };
