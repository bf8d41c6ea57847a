import { CAUSES, type Cause, type Round, SIDES } from '@/lib/measure/types';
import type { HeightVerdict } from '../types';
import { classProbabilities } from './classes';
import { componentAt } from './explanation';
import { frameRound, type HeightPair, type RoundFrame } from './frame';
import type { Learned, Misset } from './learned';
import { modelRound, type RoundModel } from './model';
import { pairParts, type Parts, zeroParts } from './parts';
import { search, type SearchEffort, type SearchResult } from './search';
import { signatureOf } from './signature';

/** Deep enough that what is left out stays below one in ten thousand in ordinary rounds. */
export const VERDICT_EFFORT: SearchEffort = { depth: 10, breadth: 800 };

export interface JudgedRound {
  frame: RoundFrame;
  model: RoundModel;
  found: SearchResult;
  heights: HeightVerdict[];
  pZeroMisset: number;
}

/** Every height of a round with its four class probabilities, or why the round cannot be judged. */
export function judgeRound(round: Round, learned: Learned, effort: SearchEffort = VERDICT_EFFORT): JudgedRound | { why: string } {
  const frame = frameRound(round);
  if ('why' in frame) return frame;
  const model = modelRound(frame, learned);
  const found = search(model, effort);
  return { frame, model, found, heights: heightVerdicts(model, found), pZeroMisset: zeroMisset(model, found) };
}

function heightVerdicts(model: RoundModel, found: SearchResult): HeightVerdict[] {
  const { frame } = model;
  const verdicts: { order: number; verdict: HeightVerdict }[] = [];
  const judge = (
    pair: HeightPair,
    x: number,
    zero: boolean,
    parts: (index: number, side: 0 | 1) => Parts,
    misset: (index: number, side: 0 | 1) => Misset | null,
  ): void => {
    for (const side of [0, 1] as const) {
      const point = pair.points[side];
      if (point === null) continue;
      const p = [0, 0, 0, 0];
      let gauge = 0;
      let body = 0;
      const slips = new Map<Misset, number>();
      found.explanations.forEach(({ weight }, index) => {
        const part = parts(index, side);
        classProbabilities(part, pair.tolerance[side]).forEach((value, c) => (p[c] = (p[c] ?? 0) + weight * value));
        gauge += weight * part.gauge;
        body += weight * part.body;
        const slip = misset(index, side);
        if (slip !== null) slips.set(slip, (slips.get(slip) ?? 0) + weight);
      });
      const total = p.reduce((sum, value) => sum + value, 0);
      const probabilities = Object.fromEntries(CAUSES.map((cause, c) => [cause, (p[c] ?? 0) / total])) as Record<Cause, number>;
      verdicts.push({
        order: pair.setup * 2 + side,
        verdict: {
          setup: pair.label,
          gauge: pair.gauge,
          technician: pair.technician,
          point,
          side: SIDES[side],
          station: x,
          zero,
          deviation: pair.y[side],
          p: probabilities,
          misset: gauge,
          body,
          signature: signatureOf(slips),
        },
      });
    }
  };
  model.zeros.forEach((zero, k) => {
    const x = frame.stations[zero.station]?.x ?? Number.NaN;
    judge(
      zero.pair,
      x,
      true,
      (index, side) => zeroParts(explanationAt(found, index), zero, side),
      (index, side) => touched(zero.settings[explanationAt(found, index).zeroSettings[k] ?? 0], side),
    );
  });
  model.steps.forEach((pair, step) => {
    judge(
      pair.pair,
      frame.stations[pair.station]?.x ?? Number.NaN,
      false,
      (index, side) => {
        const item = explanationAt(found, index);
        return pairParts(item, pair, componentAt(pair.settings, item.settings[step] ?? 0), side);
      },
      (index, side) => touched(pair.settings[explanationAt(found, index).settings[step] ?? 0], side),
    );
  });
  return verdicts.sort((a, b) => a.order - b.order).map(({ verdict }) => verdict);
}

/** The slip of a setting, where it moved this hanger. */
function touched(setting: RoundModel['zeros'][number]['settings'][number] | undefined, side: 0 | 1): Misset | null {
  if (!setting || setting.misset === 'ordinary') return null;
  return (side === 0 ? setting.left : setting.right) === 0 ? null : setting.misset;
}

function explanationAt(found: SearchResult, index: number): SearchResult['explanations'][number]['explanation'] {
  const entry = found.explanations[index];
  if (!entry) throw new RangeError(`There is no explanation ${index} among ${found.explanations.length}.`);
  return entry.explanation;
}

/** P(at least one hanger of a zero gauge that was last hung is off by more than the tolerance). */
function zeroMisset(model: RoundModel, found: SearchResult): number {
  let sum = 0;
  found.explanations.forEach(({ weight, explanation }) => {
    let sound = 1;
    for (const zero of model.zeros) {
      for (const side of [0, 1] as const) {
        const [neither, , body] = classProbabilities(zeroParts(explanation, zero, side), zero.pair.tolerance[side]);
        sound *= neither + body;
      }
    }
    sum += weight * (1 - sound);
  });
  return Math.min(1, Math.max(0, sum));
}
