import type { Candidates } from './listed';

export interface SearchEffort {
  /** Explanations less likely than the best by more than this, in ln, are left out. */
  depth: number;
  /** At most so many are kept at any step. */
  breadth: number;
  /** After the last step the likeliest are kept that together have this share. */
  share: number;
  /** Of the explanations left those of less weight are not worked out, nor given back; 0 unless it says. */
  least?: number;
  /** With it, explanations are let go by kind, and the search looks ahead; without, each by itself, by what is read so far. */
  byKind?: ByKind;
}

/**
 * An effort with every field named, all of them numbers but one: what reads it many times a round then meets objects of
 * one shape.
 */
export interface FullEffort extends Required<Omit<SearchEffort, 'byKind'>>, ByKind {
  isByKind: boolean;
}

/** @param within breadth, where it is not the effort's own. */
export function inFull(effort: SearchEffort, within = effort.breadth): FullEffort {
  const { depth, share, least = 0, byKind } = effort;
  const isByKind = byKind !== undefined;
  const { alone, together } = byKind ?? { alone: depth, together: depth };
  return { depth, breadth: within, share, least, isByKind, alone, together };
}

/** How far behind the best, in ln, what is kept may be. What is let go of a kind that is kept gives it its weight. */
export interface ByKind {
  /** An explanation by itself. */
  alone: number;
  /** All of one kind together: it is kept by its likeliest. */
  together: number;
}

export interface Kept {
  /** Candidates kept: the likeliest first as nearly as a step of `STEP` shows, then those that stand for their kinds. */
  order: number[];
  /** The share of all others, and of those within reach that found no room; of kinds that are kept nothing is counted. */
  dropped: number;
  crowded: number;
  /** ln of the summed weight of all candidates. */
  logSum: number;
}

/** Weights of the candidates beside the best, used again for every setup. */
let weights = new Float64Array(4096);

/** Candidates are ordered by steps of this in ln, which is quicker than to the last digit. */
const STEP = 1 / 8;

/**
 * The candidates within reach of the best: the likeliest, as many as there is room for. By kind, those that are let go
 * add their weight to the likeliest of their kind (in `found`).
 */
export function keep(found: Candidates, effort: FullEffort, share: number): Kept {
  const { logWeight, best } = found;
  const { breadth, isByKind, alone: depth, together } = effort;
  const steps: (number[] | undefined)[] = [];
  const last = Math.floor(depth / STEP);
  let sum = 0;
  if (weights.length < found.count) weights = new Float64Array(2 * found.count);
  for (let i = 0; i < found.count; i++) {
    const behind = best - (logWeight[i] ?? -Infinity);
    const weight = Math.exp(-behind);
    weights[i] = weight;
    sum += weight;
    if (behind > depth) continue;
    const at = Math.floor(behind / STEP);
    (steps[at] ??= []).push(i);
  }
  const order: number[] = [];
  let kept = 0;
  let crowded = 0;
  const likeliestFirst = (a: number, b: number): number => (logWeight[b] ?? 0) - (logWeight[a] ?? 0) || a - b;
  for (let at = 0; at <= last; at++) {
    const step = steps[at];
    if (!step) continue;
    // Only where not all of a step may stay does it matter which of them come first.
    if (share < 1 || order.length + step.length > breadth) step.sort(likeliestFirst);
    for (const index of step) {
      const weight = weights[index] ?? 0;
      if (order.length === breadth) crowded += weight;
      else if (kept < share * sum) {
        order.push(index);
        kept += weight;
      }
    }
  }
  if (isByKind) ({ kept, crowded } = gather(found, order, breadth, together, share * sum));
  const unlisted = Math.exp(found.logUnlisted - best);
  return {
    order,
    dropped: Math.max(0, 1 - kept / (sum + unlisted)),
    crowded: crowded / sum,
    logSum: best + Math.log(sum),
  };
}

/** All candidates of one kind. */
interface Kind {
  likeliest: number;
  isKept: boolean;
  /** Weights beside the best candidate’s: of all, and of those that are kept. */
  weight: number;
  kept: number;
}

/**
 * Adds to `order` the likeliest of each kind that is worth it and has none there yet, until all that is kept weighs
 * `enough`, and gives each kind's likeliest what is let go of it.
 * @returns the weight of the kinds that are kept, and of those that found no room.
 */
function gather(
  found: Candidates,
  order: number[],
  breadth: number,
  together: number,
  enough: number,
): { kept: number; crowded: number } {
  const { logWeight, best } = found;
  const kinds = kindsOf(found);
  let kept = 0;
  for (const index of order) {
    const kind = kinds.get(found.kind[index] ?? 0);
    if (kind === undefined) continue;
    if (!kind.isKept) kept += kind.weight;
    kind.isKept = true;
    kind.kept += weights[index] ?? 0;
  }
  const least = Math.exp(-together);
  const others = [...kinds.values()]
    .filter(({ isKept, weight }) => !isKept && weight >= least)
    .sort((a, b) => b.weight - a.weight);
  let crowded = 0;
  for (const kind of others) {
    if (kept >= enough) break;
    if (order.length >= breadth) {
      crowded += kind.weight;
      continue;
    }
    order.push(kind.likeliest);
    kept += kind.weight;
    kind.isKept = true;
    kind.kept = weights[kind.likeliest] ?? 0;
  }
  for (const { isKept, likeliest, weight, kept: own } of kinds.values()) {
    if (!isKept || weight <= own) continue;
    logWeight[likeliest] = best + Math.log((weights[likeliest] ?? 0) + weight - own);
  }
  return { kept, crowded };
}

function kindsOf({ count, kind }: Candidates): Map<number, Kind> {
  const kinds = new Map<number, Kind>();
  for (let i = 0; i < count; i++) {
    const number = kind[i] ?? 0;
    const weight = weights[i] ?? 0;
    const known = kinds.get(number);
    if (known === undefined) {
      kinds.set(number, { likeliest: i, isKept: false, weight, kept: 0 });
      continue;
    }
    known.weight += weight;
    if (weight > (weights[known.likeliest] ?? 0)) known.likeliest = i;
  }
  return kinds;
}
