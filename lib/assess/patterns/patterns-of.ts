import { SECTIONS, SIDES, type Round } from '@/lib/measure/types';
import { judgeRound, type JudgedRound } from '../cause/judge';
import type { Learned } from '../cause/learned';
import { judgePins } from '../round/centerline';
import { whyUndecidable } from '../round/decidable';
import { bodyOf } from './body';
import { changesOf } from './changes';
import { diamond } from './diamond';
import { mash } from './mash';
import { sag } from './sag';
import { sway } from './sway';
import { twist } from './twist';
import type { PatternFinding, PointPlace, RoundPatterns, Untold } from './types';

/** What was found of a round already, so that it is not worked out twice. */
export interface Judged {
  /** Its heights and its centre pins; null where they could not be judged. */
  heights: JudgedRound | null;
  pins: JudgedRound | null;
  /** Whether the center section carries the datum. */
  datum: boolean;
}

export interface PatternOptions {
  /** Points of the sheet, for lengths whose ends have no heights in the round. */
  points?: readonly PointPlace[];
  judged?: Judged;
}

/**
 * Which patterns the readings of a round bear out: sag, twist, sway, mash, diamond, each a contrast of where the body
 * is given everything read in the round. A height that is off because its gauge was set wrong makes no pattern, as far
 * as the explanations of the round say so. Where the center section does not carry the datum, heights and centre pins
 * tell no pattern; lengths still do. The same round gives the same answer.
 */
export function patternsOf(
  round: Round,
  learned: Learned,
  { points = [], judged = judgedOf(round, learned) }: PatternOptions = {},
): RoundPatterns {
  const changes = changesOf(round, learned, judged.heights, points);
  const found = [
    ...fromDatum(judged, changes),
    ...SECTIONS.flatMap((section) => SIDES.map((side) => mash(changes, section, side))),
    diamond(changes),
  ];
  const findings = found.filter((one): one is PatternFinding => 'probability' in one);
  const untold = found.filter((one): one is Untold => 'missing' in one);
  return {
    findings: findings.sort((a, b) => Number(b.named) - Number(a.named)),
    untold: untold.filter(
      (one, index) =>
        untold.findIndex(({ pattern, section }) => pattern === one.pattern && section === one.section) ===
        index,
    ),
  };
}

/** Sag, twist and sway, which are read from the datum and from the centerline of the center section. */
function fromDatum(
  { heights, pins, datum }: Judged,
  changes: Parameters<typeof sway>[1],
): (PatternFinding | Untold)[] {
  const missing = (what: Untold['missing'], ...names: Untold['pattern'][]): Untold[] =>
    names.map((pattern) => ({ pattern, section: null, missing: what }));
  if (!datum) return missing('datum', 'sag', 'twist', 'sway');
  const body = heights && bodyOf(heights);
  const aside = pins && bodyOf(pins);
  return [
    ...(body === null ? missing('heights', 'sag', 'twist') : [sag(body), twist(body)]),
    sway(aside, changes, 'front'),
    sway(aside, changes, 'rear'),
  ];
}

function judgedOf(round: Round, learned: Learned): Judged {
  const heights = judgeRound(round, learned);
  return {
    heights: 'why' in heights ? null : heights,
    pins: judgePins(round, learned),
    datum: whyUndecidable(round, learned) === null,
  };
}
