import type { Round, Side } from '@/lib/measure/types';
import { type JudgedRound, judgeRound } from '../cause/judge';
import type { Learned } from '../cause/learned';
import type { DatumLine, RoundVerdict } from '../types';
import { bestCheck, nextChecks, type UnreadLength } from './checks';
import { patternsOf } from '../patterns/patterns-of';
import { judgeCenterline, judgePins } from './centerline';
import { whyUndecidable } from './decidable';

export interface RoundOptions {
  /** Lengths of the sheet that were not read in this round. */
  unread?: readonly UnreadLength[];
  /** Only what the batch report tells: no patterns, no centre pins, and of the next checks the best. */
  brief?: boolean;
}

/** Everything that is said of one round: what each height is, whether the datum can be trusted, what to check next. */
export function assessRound(round: Round, learned: Learned, options: RoundOptions = {}): RoundVerdict {
  const { job, stage, attempt } = round;
  const brief = options.brief === true;
  const pins = brief ? null : judgePins(round, learned);
  const centerline = brief ? [] : judgeCenterline(round, learned, pins);
  const why = whyUndecidable(round, learned);
  const hasHeights = round.setups.some(({ observations }) =>
    observations.some(({ quantity }) => quantity === 'height'),
  );
  const judged = judgeRound(round, learned);
  const shape = brief
    ? {}
    : {
        patterns: patternsOf(round, learned, {
          judged: { heights: 'why' in judged ? null : judged, pins, datum: why === null },
        }),
      };
  if ('why' in judged) {
    return {
      job,
      stage,
      attempt,
      decidable: why === null && !hasHeights,
      why: why ?? (hasHeights ? judged.why : null),
      pZeroMisset: 0,
      datum: [],
      heights: [],
      centerline,
      leftOut: 0,
      nextChecks: [],
      ...shape,
    };
  }
  return {
    job,
    stage,
    attempt,
    decidable: why === null,
    why,
    pZeroMisset: judged.pZeroMisset,
    datum: datumOf(judged),
    heights: judged.heights,
    centerline,
    leftOut: judged.found.leftOut,
    nextChecks: brief
      ? [bestCheck(judged, learned)].flatMap((best) => best ?? [])
      : nextChecks(judged, learned, options.unread),
    ...shape,
  };
}

/** Expected error at both ends of the datum, by the zero setups hung last. */
function datumOf(judged: JudgedRound): DatumLine[] {
  const { model, frame, found } = judged;
  const last = (station: 0 | 1): number =>
    model.zeros.filter((zero) => zero.station === station).at(-1)?.error ?? -1;
  const expected = (at: number): number =>
    found.explanations.reduce(
      (sum, { weight, explanation }) => sum + weight * (explanation.mean[at] ?? 0),
      0,
    );
  const ends = [last(0), last(1)];
  if (ends.some((at) => at < 0)) return [];
  const sides: Side[] = ['L', 'R'];
  return sides.map((side, s) => ({
    side,
    front: { station: frame.stations[0]?.x ?? 0, error: expected((ends[0] ?? 0) + s) },
    rear: { station: frame.stations[1]?.x ?? 0, error: expected((ends[1] ?? 0) + s) },
  }));
}
