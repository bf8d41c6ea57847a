import { advance } from './advance';
import { Beam } from './beam';
import { candidates } from './candidates';
import { expand } from './expand';
import type { Explanation } from './explanation';
import { type FullEffort, inFull, keep, type SearchEffort } from './keep';
import { lookAhead } from './look-ahead';
import type { RoundModel } from './model';
import { openAhead, openBeam } from './open-beam';
import { type Outlook, outlookOf } from './outlook';

export type { ByKind, SearchEffort } from './keep';

export interface SearchResult {
  /** Best first; weights sum to one, but for those that were not to be worked out (`least`). */
  explanations: { weight: number; explanation: Explanation }[];
  logEvidence: number;
  /**
   * Shares dropped at each step, summed, or bounds on them. Under the model this bounds the probability that the
   * true explanation was left out: at each step a share is the probability of being among the dropped. By kind, it is
   * the probability that all of its kind was left out, as far as the search did not look ahead.
   */
  leftOut: number;
  /** The part of it that was dropped only because too many explanations were in reach. */
  crowdedOut: number;
}

// Rounds are searched one after another, so all of them can use the same room.
let beam = new Beam();
let next = new Beam();
/** The explanations before the first setup at which there was not room for all. */
let roomy = new Beam();

/**
 * Sums over the explanations of a round: a mis-set or ordinary setting for each setup, a damaged or sound
 * body for each station. Each explanation is Gaussian, so its marginal likelihood is exact; the setups are
 * taken in turn, each being one two-dimensional update of the state, and explanations that fell behind are
 * dropped, and what is dropped is counted. With `byKind` the search looks ahead at each step, and explanations that
 * differ in sizes alone stand for one another. The whole state is worked out for the explanations that are left.
 */
export function search(model: RoundModel, effort: SearchEffort): SearchResult {
  return searchUnlessCrowded(model, effort, 1, effort.breadth);
}

/**
 * The same, with breadth `wider` where more than `limit` would be dropped only because too many explanations are in
 * reach. As long as there is room for all, both breadths keep the same, so only the setups from there on are taken again.
 */
export function searchUnlessCrowded(
  model: RoundModel,
  effort: SearchEffort,
  limit: number,
  wider: number,
): SearchResult {
  const full = inFull(effort);
  const outlook = full.isByKind ? outlookOf(model) : [];
  let leftOut = 0;
  if (full.isByKind && model.steps.length > 0) leftOut = openAhead(model, outlook, beam, full.together);
  else openBeam(model, beam);
  const found = follow(model, outlook, full, { step: 0, leftOut }, limit);
  if (!('step' in found)) return found;
  [beam, roomy] = [roomy, beam];
  const widely = follow(model, outlook, inFull(effort, wider), found, 1);
  if ('step' in widely) throw new RangeError('A share is at most one.');
  return widely;
}

/** How far a search has come: the setup that is next, and what was left out before it. */
interface Progress {
  step: number;
  leftOut: number;
}

/**
 * Takes the setups in turn from what is in the beam. As soon as more than `limit` was dropped for want of room it
 * gives up, and says where that began; the explanations of then are in `roomy`.
 */
function follow(
  model: RoundModel,
  outlook: Outlook,
  effort: FullEffort,
  from: Progress,
  limit: number,
): SearchResult | Progress {
  let { leftOut } = from;
  let crowdedOut = 0;
  let logEvidence = 0;
  let crowded: Progress | null = null;
  for (let step = from.step; step < model.steps.length; step++) {
    const pair = model.steps[step];
    if (!pair) break;
    if (effort.isByKind && step > 0) leftOut += lookAhead(outlook, beam, step, effort.together);
    const found = candidates(model, beam, pair, effort.depth);
    const kept = keep(found, effort, step === model.steps.length - 1 ? effort.share : 1);
    if (kept.crowded > 0 && crowded === null && limit < 1) {
      crowded = { step, leftOut };
      roomy.copy(model, beam);
    }
    leftOut += kept.dropped;
    crowdedOut += kept.crowded;
    if (crowded !== null && Math.min(1, crowdedOut) > limit) return crowded;
    logEvidence = kept.logSum;
    advance(model, beam, found, kept.order, step, next);
    [beam, next] = [next, beam];
  }
  return {
    explanations: explanationsOf(model, beam, effort.least),
    logEvidence,
    leftOut: Math.min(1, leftOut),
    crowdedOut: Math.min(1, crowdedOut),
  };
}

/** @param least those that weigh less are left out; the others keep their weights. */
function explanationsOf(model: RoundModel, from: Beam, least: number): SearchResult['explanations'] {
  const { count, logWeight } = from;
  let best = -Infinity;
  for (let index = 0; index < count; index++) best = Math.max(best, logWeight[index] ?? -Infinity);
  const weights = new Float64Array(count);
  let total = 0;
  for (let index = 0; index < count; index++) {
    const weight = Math.exp((logWeight[index] ?? -Infinity) - best);
    weights[index] = weight;
    total += weight;
  }
  const worked: number[] = [];
  for (let index = 0; index < count; index++) if ((weights[index] ?? 0) / total >= least) worked.push(index);
  const expanded = expand(model, from, worked);
  const found: SearchResult['explanations'] = [];
  for (let at = 0; at < expanded.length; at++) {
    const explanation = expanded[at];
    if (explanation) found.push({ weight: (weights[worked[at] ?? 0] ?? 0) / total, explanation });
  }
  return found.sort((a, b) => b.weight - a.weight);
}
