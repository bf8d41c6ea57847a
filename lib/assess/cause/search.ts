import { advance } from './advance';
import { Beam } from './beam';
import { candidates } from './candidates';
import { expand } from './expand';
import type { Explanation } from './explanation';
import { keep, type SearchEffort } from './keep';
import type { RoundModel } from './model';
import { openBeam } from './openings';

export type { SearchEffort } from './keep';

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

// Rounds are searched one after another, so all of them can use the same room.
let beam = new Beam();
let next = new Beam();

/**
 * Sums over the explanations of a round: a mis-set or ordinary setting for each setup, a damaged or sound
 * body for each station. Each explanation is Gaussian, so its marginal likelihood is exact; the setups are
 * taken in turn, each being one two-dimensional update of the state, and explanations that fell behind are
 * dropped, and what is dropped is counted. The whole state is worked out for the explanations that are left.
 */
export function search(model: RoundModel, effort: SearchEffort): SearchResult {
  const found = searchUnlessCrowded(model, effort, 1);
  if (!found) throw new RangeError('A share is at most one.');
  return found;
}

/** The same, or null as soon as more than `limit` was dropped only because too many explanations were in reach. */
export function searchUnlessCrowded(
  model: RoundModel,
  effort: SearchEffort,
  limit: number,
): SearchResult | null {
  openBeam(model, beam);
  let leftOut = 0;
  let crowdedOut = 0;
  let logEvidence = 0;
  for (const [step, pair] of model.steps.entries()) {
    const found = candidates(model, beam, pair, effort.depth);
    const kept = keep(found, effort, step === model.steps.length - 1 ? effort.share : 1);
    leftOut += kept.dropped;
    crowdedOut += kept.crowded;
    if (Math.min(1, crowdedOut) > limit) return null;
    logEvidence = kept.logSum;
    advance(model, beam, found, kept.order, step, next);
    [beam, next] = [next, beam];
  }
  return {
    explanations: explanationsOf(model, beam),
    logEvidence,
    leftOut: Math.min(1, leftOut),
    crowdedOut: Math.min(1, crowdedOut),
  };
}

function explanationsOf(model: RoundModel, from: Beam): SearchResult['explanations'] {
  const { count, logWeight } = from;
  const best = logWeight.subarray(0, count).reduce((most, value) => Math.max(most, value), -Infinity);
  const weights = Array.from(logWeight.subarray(0, count), (value) => Math.exp(value - best));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return expand(model, from)
    .map((explanation, index) => ({ weight: (weights[index] ?? 0) / total, explanation }))
    .sort((a, b) => b.weight - a.weight);
}
