import type { Side } from '@/lib/measure';
import type { Scene, ScenePoint } from './scene';

/** Bars longer than this (or four tolerances) are cut off, mm, so that one slip of a hundred millimetres does not flatten all others. */
const LONGEST_BAR = 12;
/** Room above and below the outermost bars for a number or a letter, and for the name of a view. */
const ROOM = { label: 20, title: 24 } as const;
/** A point this far above its neighbours belongs to a tower, not to the rail below it, mm. */
const TOWER = 230;

/** Where everything of a picture stands, in the units of its view; one for all its rounds, so that they compare. */
export interface Layout {
  width: number;
  x: (station: number) => number;
  left: number;
  right: number;
  /** Units to the millimetre along the vehicle, and for deviations. */
  along: number;
  deviation: number;
  /** How many times larger deviations are drawn than the vehicle. */
  exaggeration: number;
  /** Deviations beyond this are cut off, mm. */
  limit: number;
  /** Whether any bar is. */
  cut: boolean;
  plan: { height: number; middle: number; half: number };
  band: { height: number; datum: number };
}

export function layoutOf(scene: Scene, width: number): Layout {
  const stations = scene.points.map(({ station }) => station);
  const [first, last] = [Math.min(...stations), Math.max(...stations)];
  const edge = width < 500 ? 16 : 26;
  const margin = Math.max(140, (last - first) * 0.05);
  const along = (width - 2 * edge) / (last - first + 2 * margin);

  const heights = scene.rounds.flatMap((round) => round.heights);
  const pins = scene.rounds.flatMap((round) => round.pins);
  const widest = Math.max(1, ...heights.map(({ tolerance }) => tolerance));
  const largest = Math.max(
    1.6 * widest,
    ...heights.flatMap(({ deviation, parts }) =>
      [deviation, parts?.gauge ?? 0, parts?.body ?? 0].map(Math.abs),
    ),
    ...pins.map(({ deviation }) => Math.abs(deviation)),
  );
  const limit = Math.min(Math.max(LONGEST_BAR, 4 * widest), largest);
  const reach = 46;
  const exaggeration = Math.max(1, roundDown(reach / limit / along));
  const deviation = exaggeration * along;

  const half = Math.max(...scene.points.map(({ halfWidth }) => halfWidth)) * along;
  const { up, down } = reachOf(scene, { along, deviation, limit });
  const datum = ROOM.title + ROOM.label + up;
  return {
    width,
    x: (station) => edge + (station - first + margin) * along,
    left: edge,
    right: width - edge,
    along,
    deviation,
    exaggeration,
    limit,
    cut: largest > limit,
    plan: { height: 2 * half + 2 * OVERHANG + ROOM.title + 16, middle: ROOM.title + OVERHANG + half, half },
    band: { height: datum + Math.max(ROOM.label, down + ROOM.label) + 14, datum },
  };
}

/** How far bars and bands stand above the datum plane and below it, in the units of the view. */
function reachOf(
  { points, rounds }: Scene,
  { along, deviation, limit }: Pick<Layout, 'along' | 'deviation' | 'limit'>,
): { up: number; down: number } {
  let [up, down] = [0, 0];
  for (const { letter, side, height } of points)
    for (const { heights } of rounds)
      for (const one of heights) {
        if (one.letter !== letter || one.side !== side) continue;
        const values = [
          one.deviation,
          one.parts?.gauge ?? 0,
          one.parts?.body ?? 0,
          one.tolerance,
          -one.tolerance,
        ];
        for (const value of values) {
          const at = height * along + Math.min(limit, Math.max(-limit, value)) * deviation;
          [up, down] = [Math.max(up, at), Math.max(down, -at)];
        }
      }
  return { up, down };
}

/** How far the outline of the body stands out beyond its points. */
export const OVERHANG = 30;

/** A deviation as far as it is drawn. */
export const held = ({ limit }: Layout, deviation: number): number =>
  Math.min(limit, Math.max(-limit, deviation));

/** Above the left side of the picture lies the left of the vehicle: from below with the front at the left. */
export const across = ({ plan, along }: Layout, side: Side, halfWidth: number): number =>
  plan.middle + (side === 'L' ? -1 : 1) * halfWidth * along;

/** The points of a side that a rail runs through, from front to rear: towers stand beside it. */
export function railOf(points: readonly ScenePoint[], side: Side): ScenePoint[] {
  const own = points.filter((point) => point.side === side).sort((a, b) => a.station - b.station);
  return own.filter((point) => !isTower(own, point));
}

export function isTower(own: readonly ScenePoint[], point: ScenePoint): boolean {
  const others = own.filter(({ station }) => station !== point.station).map(({ height }) => height);
  const middle = [...others].sort((a, b) => a - b)[Math.floor(others.length / 2)];
  return middle !== undefined && point.height - middle > TOWER;
}

/** Down to one or two figures, so that the stated scale is one that people can say. */
function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return (Math.floor((value / power) * 2) / 2) * power;
}
