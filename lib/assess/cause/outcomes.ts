import type { Cause } from '@/lib/measure/types';
import { type ClassProbabilities, classProbabilities, SURE } from './classes';
import type { Component } from './components';
import { componentAt, type Explanation } from './explanation';
import type { HeightPair } from './frame';
import type { RoundModel } from './model';
import { pairParts, type Parts, zeroParts } from './parts';
import type { SearchResult } from './search';

/** How often a recorded re-check is taken to have been recorded wrongly; a judgement of ours. */
const RECORDED_WRONGLY = 0.001;

/** P(this cause was recorded | class), for each class in turn. */
const recorded = (cause: Cause): ClassProbabilities => {
  const p = (of: Cause): number => (of === cause ? 1 - RECORDED_WRONGLY : RECORDED_WRONGLY / 3);
  return [p('neither'), p('gauge'), p('body'), p('both')];
};

/** One height of a round with its two parts under any explanation. */
export interface HeightParts {
  pair: HeightPair;
  side: 0 | 1;
  /** Place of its station in the frame. */
  station: number;
  zero: boolean;
  parts: (explanation: Explanation) => Parts;
  /** How this height's gauge was set, under an explanation. */
  setting: (explanation: Explanation) => Component;
}

/** All heights that were read, the zero stations' first. */
export function heightParts(model: RoundModel): HeightParts[] {
  const heights: HeightParts[] = [];
  for (const side of [0, 1] as const) {
    model.zeros.forEach((zero, k) => {
      if (zero.pair.points[side] === null) return;
      heights.push({
        pair: zero.pair,
        side,
        station: zero.station,
        zero: true,
        parts: (item) => zeroParts(item, zero, side),
        setting: (item) => componentAt(zero.settings, item.zeroSettings[k] ?? 0),
      });
    });
    model.steps.forEach((pair, step) => {
      if (pair.pair.points[side] === null) return;
      const setting = (item: Explanation): Component => componentAt(pair.settings, item.settings[step] ?? 0);
      heights.push({
        pair: pair.pair,
        side,
        station: pair.station,
        zero: false,
        parts: (item) => pairParts(item, pair, setting(item), side),
        setting,
      });
    });
  }
  return heights;
}

/**
 * Class probabilities of a height with these parts, given what a re-check proved of it.
 * @param sure as `classProbabilities` takes it; a proof can make much of little, so it asks for all digits.
 */
export function classesGiven(
  height: HeightParts,
  parts: Parts,
  sure = SURE,
): { classes: ClassProbabilities; likelihood: number } {
  const cause = height.pair.cause[height.side];
  const prior = classProbabilities(parts, height.pair.tolerance[height.side], cause === null ? sure : SURE);
  if (cause === null) return { classes: prior, likelihood: 1 };
  const seen = recorded(cause);
  const joint: ClassProbabilities = [
    prior[0] * seen[0],
    prior[1] * seen[1],
    prior[2] * seen[2],
    prior[3] * seen[3],
  ];
  const likelihood = joint[0] + joint[1] + joint[2] + joint[3];
  if (likelihood <= 0) return { classes: prior, likelihood: 1 };
  return {
    classes: [joint[0] / likelihood, joint[1] / likelihood, joint[2] / likelihood, joint[3] / likelihood],
    likelihood,
  };
}

/** Whether a re-check proved something of this round. */
export const isProved = ({ zeros, steps }: RoundModel): boolean =>
  [...zeros, ...steps].some(({ pair }) => pair.cause.some((cause) => cause !== null));

/** The explanations weighed again by what re-checks proved in this round. */
export function weighOutcomes(model: RoundModel, found: SearchResult): SearchResult {
  if (!isProved(model)) return found;
  const proved = heightParts(model).filter((height) => height.pair.cause[height.side] !== null);
  if (proved.length === 0) return found;
  let total = 0;
  const joint = found.explanations.map(({ weight, explanation }) => {
    let product = weight;
    for (const height of proved) product *= classesGiven(height, height.parts(explanation)).likelihood;
    total += product;
    return product;
  });
  if (!(total > 0)) return found;
  const explanations: SearchResult['explanations'] = [];
  found.explanations.forEach(({ explanation }, at) => {
    explanations.push({ weight: (joint[at] ?? 0) / total, explanation });
  });
  return {
    explanations: explanations.sort((a, b) => b.weight - a.weight),
    logEvidence: found.logEvidence + Math.log(total),
    leftOut: found.leftOut,
    crowdedOut: found.crowdedOut,
  };
}
