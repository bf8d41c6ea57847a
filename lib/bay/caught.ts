import { collapse } from '@/lib/measure/collapse';
import type { Cause, Round, Side } from '@/lib/measure/types';
import { frameRound } from '@/lib/assess/cause/frame';
import type { Learned, Misset } from '@/lib/assess/cause/learned';
import { SLIP_WORDS } from '@/lib/assess/cause/signature';
import { slipsOf } from '@/lib/assess/cause/slips';
import { recordedLengths } from '@/lib/assess/recorded';
import { assessRound } from '@/lib/assess/round/assess-round';
import { callOf, type Call } from '@/lib/assess/round/call';
import { inCenter, whyUndecidable, zeroNames } from '@/lib/assess/round/decidable';
import type { CheckAction, HeightVerdict } from '@/lib/assess/types';
import { standardUncertainties } from '@/lib/assess/uncertainty/standard-uncertainties';
import { readingsOf } from './readings';
import type { BayRecord } from './record';
import type { BayHead } from './types';

/** What the device knows of the shop: enough to say at once what a reading means. */
export interface Knowing {
  learned: Learned;
  missCost: number;
}

export interface NamedSlip {
  slip: Misset;
  /** What it moves the reading by, mm; null where its size is not known. */
  size: number | null;
}

/** What is said of one height (or centre pin) while the round is still being measured. */
export interface CaughtHeight {
  quantity: 'height' | 'centerline';
  setup: string;
  point: string;
  side: Side | null;
  call: Call;
  p: Record<Cause, number>;
  /** Expected part of the gauge and of the body, mm. */
  gaugePart: number;
  bodyPart: number;
  slip: NamedSlip | null;
}

export interface LengthOut {
  point: string;
  /** Mean deviation, mm. */
  deviation: number;
  tolerance: number;
}

export interface CaughtRound {
  /** Lengths and diagonals of the center section beyond their tolerance. */
  centerOut: LengthOut[];
  /** False where one of them is out by more than its uncertainty: then no height is decided. */
  datumTrusted: boolean;
  /** P(at least one zero gauge is set wrong); null while no datum hangs. */
  zeroMisset: number | null;
  heights: CaughtHeight[];
  /** Standard uncertainty of each deviation, mm, by setup and dimension: `b1-4k7p height K L`. */
  uncertainties: ReadonlyMap<string, number>;
  /** The check that is worth most for its minutes, or null. */
  check: { action: CheckAction; setup: string | null; other: string | null; point: string | null } | null;
  /** What all of this rests on. */
  rests: {
    /** Readings of this round so far. */
    readings: number;
    /** Rounds of the shop that hands, gauges and rates were learned from; 0: common practice alone. */
    rounds: number;
  };
}

/** What the readings so far say; null before the first. Some ten milliseconds, up to a hundred on a slow device. */
export function caughtIn(
  head: BayHead,
  record: BayRecord,
  { learned, missCost }: Knowing,
): CaughtRound | null {
  const readings = readingsOf(head, record);
  const round = collapse(readings)[0]?.rounds[0];
  if (round === undefined) return null;
  const verdict = assessRound(round, learned);
  const zeros = zeroNames(round);
  const centerOut = recordedLengths(round).filter((one) => !one.within && inCenter(one, zeros));
  const call = ({ p }: { p: Record<Cause, number> }) => callOf(p, missCost);
  const [check] = verdict.nextChecks;
  return {
    centerOut: centerOut.map(({ point, deviation, tolerance }) => ({ point, deviation, tolerance })),
    datumTrusted: whyUndecidable(round, learned) === null,
    zeroMisset: verdict.heights.length > 0 ? verdict.pZeroMisset : null,
    heights: [
      ...verdict.heights.map((height) => ({
        quantity: 'height' as const,
        setup: height.setup,
        point: height.point,
        side: height.side,
        p: height.p,
        call: call(height),
        gaugePart: height.misset,
        bodyPart: height.body,
        slip: slipOf(height, round, learned),
      })),
      ...verdict.centerline.map((pin) => ({
        quantity: 'centerline' as const,
        setup: pin.setup,
        point: pin.point,
        side: null,
        p: pin.p,
        call: call(pin),
        gaugePart: pin.misset,
        bodyPart: pin.body,
        slip: null,
      })),
    ],
    uncertainties: standardUncertainties(round, learned),
    check:
      check === undefined
        ? null
        : { action: check.action, setup: check.setup, other: check.other, point: check.point },
    rests: { readings: readings.length, rounds: learned.rounds },
  };
}

/** The slip that the verdict names, with the size of that kind which is nearest to the gauge's expected part. */
function slipOf(height: HeightVerdict, round: Round, learned: Learned): NamedSlip | null {
  const named = Object.entries(SLIP_WORDS).find(([, words]) => words !== null && words === height.signature);
  if (named === undefined) return null;
  const slip = named[0] as Misset;
  const sizes = slip === 'other-mark' ? marksOf(height, learned) : sizesOf(slip, height, round);
  const away = (size: number) => Math.abs(size - height.misset);
  const [size = null] = [...sizes].sort((a, b) => away(a) - away(b));
  return { slip, size };
}

function marksOf({ gauge }: HeightVerdict, learned: Learned): number[] {
  const { mark } = learned.gauges[gauge] ?? learned.newGauge;
  return [mark, -mark];
}

function sizesOf(slip: Misset, { setup, station, side }: HeightVerdict, round: Round): number[] {
  const frame = frameRound(round);
  if ('why' in frame) return [];
  const pair = frame.stations.find(({ x }) => x === station)?.pairs.find(({ label }) => label === setup);
  if (pair === undefined) return [];
  return slipsOf(pair, frame)
    .filter((one) => one.misset === slip)
    .map((one) => (side === 'L' ? one.left : one.right))
    .filter((size) => size !== 0);
}
