import { type Round, SIDES } from '@/lib/measure/types';
import type { HeightVerdict } from '../types';
import { SURE, within } from './classes';
import { frameRound, type RoundFrame } from './frame';
import type { Learned, Misset } from './learned';
import { modelRound, type RoundModel, type ZeroModel } from './model';
import { classesGiven, type HeightParts, heightParts, isProved, weighOutcomes } from './outcomes';
import { zeroParts } from './parts';
import { type SearchEffort, type SearchResult, searchUnlessCrowded } from './search';
import { signatureOf } from './signature';

/** The same search of explanations one by one, whose weights are their own alone. */
export const ONE_BY_ONE: SearchEffort = { depth: 9, breadth: 400, share: 0.998 };

/**
 * Enough for nearly all rounds; where the readings leave much in reach, the search is made again, wider. The share that
 * is left out at the end hardly moves a probability, unless a re-check weighs what is left out up again.
 */
export const VERDICT_EFFORT: SearchEffort = { ...ONE_BY_ONE, byKind: { alone: 6, together: 8 } };
const PROVED_SHARE = 0.999;

/** With more than this share dropped for want of room, verdicts would move by more than a hundredth. */
const TOO_CROWDED = 0.005;
const WIDER = 4;

/** What one explanation may leave open of a height’s probabilities, its weight counted: some hundreds do not show. */
const UNREAD = 1e-5;

/** A round with its explanations, before anything is said of its heights. */
export interface ExplainedRound {
  frame: RoundFrame;
  model: RoundModel;
  found: SearchResult;
}

export interface JudgedRound extends ExplainedRound {
  heights: HeightVerdict[];
  pZeroMisset: number;
}

/** The explanations of a round, recorded causes weighed in, or why there are none. */
export function explainRound(
  round: Round,
  learned: Learned,
  wanted?: SearchEffort,
): ExplainedRound | { why: string } {
  const frame = frameRound(round);
  if ('why' in frame) return frame;
  const model = modelRound(frame, learned);
  const effort = wanted ?? (isProved(model) ? { ...VERDICT_EFFORT, share: PROVED_SHARE } : VERDICT_EFFORT);
  return {
    frame,
    model,
    found: weighOutcomes(model, searchUnlessCrowded(model, effort, TOO_CROWDED, WIDER * effort.breadth)),
  };
}

/** Every height of a round with its four class probabilities, or why the round cannot be judged. */
export function judgeRound(
  round: Round,
  learned: Learned,
  effort?: SearchEffort,
): JudgedRound | { why: string } {
  const explained = explainRound(round, learned, effort);
  if ('why' in explained) return explained;
  const { frame, model, found } = explained;
  const heights = heightParts(model)
    .sort((a, b) => a.pair.setup - b.pair.setup || a.station - b.station || a.side - b.side)
    .map((height) => judgeHeight(explained, height));
  return { frame, model, found, heights, pZeroMisset: zeroMisset(explained, model.zeros) };
}

/** What is said of one height of an explained round. */
export function judgeHeight(
  { model, found }: Pick<ExplainedRound, 'model' | 'found'>,
  height: HeightParts,
): HeightVerdict {
  const { pair, side } = height;
  let pNeither = 0;
  let pGauge = 0;
  let pBody = 0;
  let pBoth = 0;
  let gauge = 0;
  let body = 0;
  const slips = new Map<Misset, number>();
  for (const { weight, explanation } of found.explanations) {
    const parts = height.parts(explanation);
    const { classes } = classesGiven(height, parts, Math.max(SURE, UNREAD / weight));
    pNeither += weight * classes[0];
    pGauge += weight * classes[1];
    pBody += weight * classes[2];
    pBoth += weight * classes[3];
    gauge += weight * parts.gauge;
    body += weight * parts.body;
    const setting = height.setting(explanation);
    if (setting.misset !== 'ordinary' && (side === 0 ? setting.left : setting.right) !== 0) {
      slips.set(setting.misset, (slips.get(setting.misset) ?? 0) + weight);
    }
  }
  const total = pNeither + pGauge + pBody + pBoth;
  return {
    setup: pair.label,
    gauge: pair.gauge,
    technician: pair.technician,
    point: pair.points[side] ?? '',
    side: SIDES[side],
    station: model.frame.stations[height.station]?.x ?? Number.NaN,
    zero: height.zero,
    deviation: pair.y[side],
    p: { neither: pNeither / total, gauge: pGauge / total, body: pBody / total, both: pBoth / total },
    misset: gauge,
    body,
    signature: signatureOf(slips),
  };
}

/** P(at least one hanger of these zero gauges is off by more than the tolerance). */
export function zeroMisset({ found }: Pick<ExplainedRound, 'found'>, zeros: readonly ZeroModel[]): number {
  let sum = 0;
  for (const { weight, explanation } of found.explanations) {
    let sound = 1;
    for (const zero of zeros) {
      for (const side of [0, 1] as const) {
        const { gauge, varGauge } = zeroParts(explanation, zero, side);
        sound *= within(gauge, Math.sqrt(varGauge), zero.pair.tolerance[side]);
      }
    }
    sum += weight * (1 - sound);
  }
  return Math.min(1, Math.max(0, sum));
}
