import { type Candidates, candidates } from './candidates';
import { componentAt, type Explanation, observe, patternProbability, project } from './explanation';
import { emptyExplanation, open, type Opening, openings } from './openings';
import type { PairModel, RoundModel } from './model';

export interface SearchResult {
  /** Best first; weights sum to one. */
  explanations: { weight: number; explanation: Explanation }[];
  logEvidence: number;
  /**
   * Shares dropped at each step, summed, or bounds on them. Under the model this bounds the probability that the
   * true explanation was left out: at each step a share is the probability of being among the dropped.
   */
  leftOut: number;
  /** The part of it that was dropped only because too many explanations were in reach. */
  crowdedOut: number;
}

export interface SearchEffort {
  /** Explanations less likely than the best by more than this, in ln, are left out. */
  depth: number;
  /** At most so many are kept at any step. */
  breadth: number;
  /** After the last step the likeliest are kept that together have this share. */
  share: number;
}

/**
 * Sums over the explanations of a round: a mis-set or ordinary setting for each setup, a damaged or sound
 * body for each station. Each explanation is Gaussian, so its marginal likelihood is exact; the setups are
 * taken in turn, each being one two-dimensional update of the state, and explanations that fell behind are
 * dropped, and what is dropped is counted.
 */
export function search(model: RoundModel, effort: SearchEffort): SearchResult {
  const starts = openings(model);
  const scratch = emptyExplanation(model);
  let beam: Explanation[] = [];
  let leftOut = 0;
  let crowdedOut = 0;
  let logEvidence = 0;
  model.steps.forEach((pair, step) => {
    const source: Source =
      step === 0
        ? { count: starts.length, at: (index) => (open(model, startAt(starts, index), scratch), scratch) }
        : { count: beam.length, at: (index) => explanationAt(beam, index) };
    const found = candidates(model, source, pair, effort.depth);
    const kept = keep(found, effort, step === model.steps.length - 1 ? effort.share : 1);
    leftOut += kept.dropped;
    crowdedOut += kept.crowded;
    logEvidence = kept.logSum;
    beam = kept.order.map((index) =>
      advance(model, source.at(found.from[index] ?? 0), found, index, pair, step),
    );
  });
  if (model.steps.length === 0) {
    beam = starts.map((start) => {
      const item = emptyExplanation(model);
      open(model, start, item);
      return item;
    });
  }
  const logKept = beam.reduce((sum, item) => logAdd(sum, item.logWeight), -Infinity);
  return {
    explanations: beam
      .map((explanation) => ({ weight: Math.exp(explanation.logWeight - logKept), explanation }))
      .sort((a, b) => b.weight - a.weight),
    logEvidence,
    leftOut: Math.min(1, leftOut),
    crowdedOut: Math.min(1, crowdedOut),
  };
}

/** Where candidates start from: the openings, made one at a time in the same room, or the explanations kept. */
export interface Source {
  count: number;
  at: (index: number) => Explanation;
}

const startAt = (list: Opening[], index: number): Opening => {
  const found = list[index];
  if (!found) throw new RangeError(`There is no opening ${index} among ${list.length}.`);
  return found;
};

const explanationAt = (list: Explanation[], index: number): Explanation => {
  const found = list[index];
  if (!found) throw new RangeError(`There is no explanation ${index} among ${list.length}.`);
  return found;
};

const logAdd = (a: number, b: number): number => {
  const top = Math.max(a, b);
  return top === -Infinity ? top : top + Math.log(Math.exp(a - top) + Math.exp(b - top));
};

/** The candidates within reach of the best, the share of all others, and ln of the summed weight of all. */
function keep(
  found: Candidates,
  effort: SearchEffort,
  share: number,
): { order: number[]; dropped: number; crowded: number; logSum: number } {
  const { logWeight } = found;
  let best = -Infinity;
  for (let i = 0; i < found.count; i++) best = Math.max(best, logWeight[i] ?? -Infinity);
  const weights = logWeight.subarray(0, found.count).map((value) => Math.exp(value - best));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  let order: number[] = [];
  for (let i = 0; i < found.count; i++) if ((logWeight[i] ?? -Infinity) >= best - effort.depth) order.push(i);
  if (order.length > effort.breadth || share < 1)
    order.sort((a, b) => (logWeight[b] ?? 0) - (logWeight[a] ?? 0));
  let count = 0;
  let kept = 0;
  for (const index of order) {
    if (count === effort.breadth || kept >= share * sum) break;
    kept += weights[index] ?? 0;
    count++;
  }
  let crowded = 0;
  if (count === effort.breadth) for (const index of order.slice(count)) crowded += weights[index] ?? 0;
  order = order.slice(0, count);
  const unlisted = Math.exp(found.logUnlisted - best);
  return {
    order,
    dropped: Math.max(0, 1 - kept / (sum + unlisted)),
    crowded: crowded / sum,
    logSum: best + Math.log(sum),
  };
}

/** The explanation after one more setup: the state conditioned on its two readings. */
function advance(
  model: RoundModel,
  from: Explanation,
  found: Candidates,
  index: number,
  pair: PairModel,
  step: number,
): Explanation {
  const row = found.row[index] ?? 0;
  const item: Explanation = {
    logWeight: found.logWeight[index] ?? -Infinity,
    mean: from.mean.slice(),
    covariance: from.covariance.slice(),
    impacts: from.impacts.slice(),
    bodies: from.bodies.slice(),
    zeroSettings: from.zeroSettings.slice(),
    settings: from.settings.slice(),
  };
  const block = pair.blocks[found.block[index] ?? 0];
  if (pair.first && block) settle(model, item, pair, block.body, block.sides);
  const setting = pair.columns.setting[row] ?? 0;
  item.settings[step] = setting;
  condition(item, pair, setting);
  return item;
}

/** Puts the body hypothesis of a station that is met for the first time into the state. */
function settle(model: RoundModel, item: Explanation, pair: PairModel, index: number, pattern: number): void {
  const body = componentAt(model.bodies, index);
  const n = model.size;
  item.bodies[pair.station] = index;
  let total = 0;
  for (let c = 0; c < item.impacts.length; c++) {
    const value = (item.impacts[c] ?? 0) * patternProbability(model, c, pair.station, pattern);
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

function condition(item: Explanation, pair: PairModel, index: number): void {
  const setting = componentAt(pair.settings, index);
  const n = item.mean.length;
  const { mean, covariance } = item;
  const rows = new Float64Array(2 * n);
  observe(item, pair, rows);
  const rL = pair.y[0] - setting.left - project(mean, 0, pair, 0);
  const rR = pair.y[1] - setting.right - project(mean, 0, pair, 1);
  const vL = project(rows, 0, pair, 0) + pair.noise[0] + pair.commonNoise + setting.varLeft;
  const vR = project(rows, n, pair, 1) + pair.noise[1] + pair.commonNoise + setting.varRight;
  const c = project(rows, 0, pair, 1) + pair.commonNoise + setting.covariance;
  const det = pair.hasLeft && pair.hasRight ? vL * vR - c * c : 1;
  const iLL = pair.hasLeft ? (pair.hasRight ? vR / det : 1 / vL) : 0;
  const iRR = pair.hasRight ? (pair.hasLeft ? vL / det : 1 / vR) : 0;
  const iLR = pair.hasLeft && pair.hasRight ? -c / det : 0;
  const eL = pair.hasLeft ? rL : 0;
  const eR = pair.hasRight ? rR : 0;
  const gL = iLL * eL + iLR * eR;
  const gR = iLR * eL + iRR * eR;
  for (let i = 0; i < n; i++) {
    const a = rows[i] ?? 0;
    const b = rows[n + i] ?? 0;
    if (a === 0 && b === 0) continue;
    mean[i] = (mean[i] ?? 0) + a * gL + b * gR;
    const kL = a * iLL + b * iLR;
    const kR = a * iLR + b * iRR;
    const at = i * n;
    for (let j = 0; j < n; j++)
      covariance[at + j] = (covariance[at + j] ?? 0) - kL * (rows[j] ?? 0) - kR * (rows[n + j] ?? 0);
  }
}
