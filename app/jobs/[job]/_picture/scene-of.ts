import type { Scene, ScenePoint, SceneRound } from '@/app/_figures/vehicle-picture';
import { heightRows } from '@/app/jobs/[job]/_parts/heights';
import { roundName } from '@/app/_words/jobs';
import { recordedDimensions, type RoundVerdict } from '@/lib/assess';
import { lengthPlaces } from '@/lib/assess/patterns';
import { jobStart } from '@/lib/assess/rates';
import type { Job, Round, Side } from '@/lib/measure';
import type { SheetPoint } from '@/lib/access';
import { eitherSide } from './either-side';

/** Where a point stands that the sheet gives no distance from the centerline: about where a rail is, mm. */
export const DEFAULT_HALF_WIDTH = 450;

interface Known {
  job: Job;
  verdictOf: (round: Round) => RoundVerdict | null;
  missCost: number;
  /** Points of the job's sheet; none where it was measured without one. */
  points: readonly SheetPoint[];
}

/** The vehicle and some rounds of it as the picture takes them; null where none of them has a height to draw. */
export function sceneOf(known: Known, rounds: readonly Round[]): Scene | null {
  const points = pointsOf(rounds, known.points);
  if (points.length === 0) return null;
  const { zone } = jobStart(known.job);
  return {
    points,
    zone: zone === 'none' || zone === 'unknown' ? null : zone,
    rounds: rounds.map((round) => roundOf(known, round, points)),
  };
}

/** Every point whose height was read in one of the rounds. */
function pointsOf(rounds: readonly Round[], sheet: readonly SheetPoint[]): ScenePoint[] {
  const points = new Map<string, ScenePoint>();
  for (const { setups } of rounds)
    for (const { observations } of setups)
      for (const { quantity, point: letter, side, station, section, nominal, zero } of observations) {
        if (quantity !== 'height' || side === null || station === null) continue;
        const half = halfWidthOf(sheet, letter, side);
        points.set(`${letter} ${side}`, {
          letter,
          side,
          station,
          section,
          zero,
          height: nominal,
          halfWidth: half ?? DEFAULT_HALF_WIDTH,
          placed: half !== null,
        });
      }
  return [...points.values()];
}

function halfWidthOf(sheet: readonly SheetPoint[], letter: string, side: Side): number | null {
  const own = sheet.filter((point) => point.letter === letter && point.halfWidth !== null);
  return (own.find((point) => point.side === side) ?? own[0])?.halfWidth ?? null;
}

function roundOf(
  { verdictOf, missCost, points }: Known,
  round: Round,
  drawn: readonly ScenePoint[],
): SceneRound {
  const verdict = verdictOf(round);
  const placeOf = lengthPlaces(round, points);
  const record = recordedDimensions(round);
  return {
    name: roundName(round.stage, round.attempt),
    heights: heightRows(round, verdict, missCost)
      .filter(({ last }) => last)
      .map(({ point: letter, side, deviation, tolerance, verdict: told, call }) => ({
        letter,
        side,
        deviation,
        tolerance,
        call,
        within: record.some((one) => one.point === letter && one.side === side && one.within),
        parts: told === null || verdict?.decidable === false ? null : { gauge: told.misset, body: told.body },
      })),
    lengths: record
      .filter(({ quantity }) => quantity === 'length')
      .map(({ point, nominal, deviation, within }) => {
        const ends = placeOf(point);
        const either = ends === null ? eitherSide({ point, nominal }, drawn) : [];
        return { name: point.replace('-', '–'), ends, either, deviation, within };
      }),
    pins: record.flatMap(({ quantity, point: letter, station, deviation, within }) =>
      quantity === 'centerline' && station !== null ? [{ letter, station, deviation, within }] : [],
    ),
    datum: verdict?.decidable === true ? verdict.datum : [],
  };
}

/** Points that stand in a place of ours. */
export const unplaced = ({ points }: Scene): ScenePoint[] => points.filter(({ placed }) => !placed);

/** Lengths of which a line is drawn wherever they may lie, since their name does not say the side. */
export const ofEitherSide = (scene: Scene): string[] =>
  lengthsWhere(scene, ({ ends, either }) => ends === null && either.length > 0);

/** Lengths that are not drawn, since the sheet does not say the place of an end. */
export const undrawn = (scene: Scene): string[] =>
  lengthsWhere(scene, ({ ends, either }) => ends === null && either.length === 0);

const lengthsWhere = (
  { rounds }: Scene,
  is: (length: SceneRound['lengths'][number]) => boolean,
): string[] => [...new Set(rounds.flatMap(({ lengths }) => lengths.filter(is).map(({ name }) => name)))];
