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
}

export interface Kept {
  /** Candidates kept, the likeliest first as nearly as a step of `STEP` shows. */
  order: number[];
  /** The share of all others, and of those within reach that found no room. */
  dropped: number;
  crowded: number;
  /** ln of the summed weight of all candidates. */
  logSum: number;
}

/** Candidates are ordered by steps of this in ln, which is quicker than to the last digit. */
const STEP = 1 / 8;

/** The candidates within reach of the best: the likeliest, as many as there is room for. */
export function keep(found: Candidates, effort: SearchEffort, share: number): Kept {
  const { logWeight, best } = found;
  const { depth, breadth } = effort;
  const steps: (number[] | undefined)[] = [];
  const last = Math.floor(depth / STEP);
  let sum = 0;
  for (let i = 0; i < found.count; i++) {
    const behind = best - (logWeight[i] ?? -Infinity);
    sum += Math.exp(-behind);
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
      const weight = Math.exp((logWeight[index] ?? -Infinity) - best);
      if (order.length === breadth) crowded += weight;
      else if (kept < share * sum) {
        order.push(index);
        kept += weight;
      }
    }
  }
  const unlisted = Math.exp(found.logUnlisted - best);
  return {
    order,
    dropped: Math.max(0, 1 - kept / (sum + unlisted)),
    crowded: crowded / sum,
    logSum: best + Math.log(sum),
  };
}
