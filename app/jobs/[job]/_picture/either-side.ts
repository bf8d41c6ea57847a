import type { ScenePlace, ScenePoint } from '@/app/_figures/vehicle-picture/scene';
import { lengthEnds } from '@/lib/measure/dimension';
import type { Side } from '@/lib/measure';

type Line = [ScenePlace, ScenePlace];

const across = (side: Side): Side => (side === 'L' ? 'R' : 'L');

/**
 * Where a length may lie whose name does not say its sides: left and right, or both ways across, whichever comes
 * nearer to the sheet value. A length from point to point is as long as its ends are apart, along, across and up.
 * @returns both lines, or none where an end stands nowhere.
 */
export function eitherSide(
  { point, nominal }: { point: string; nominal: number },
  points: readonly ScenePoint[],
): Line[] {
  const [a, b] = lengthEnds(point) ?? [];
  if (a === undefined || b === undefined) return [];
  const lines = (other: (side: Side) => Side): { line: Line; apart: number }[] =>
    (['L', 'R'] as const).flatMap((side) => {
      const from = points.find((one) => one.letter === a.point && one.side === (a.side ?? side));
      const to = points.find((one) => one.letter === b.point && one.side === (b.side ?? other(side)));
      if (from === undefined || to === undefined) return [];
      return [{ line: [placeOf(from), placeOf(to)], apart: distance(from, to) }];
    });
  const straight = lines((side) => side);
  const diagonal = lines(across);
  const off = (some: typeof straight) => Math.min(...some.map(({ apart }) => Math.abs(apart - nominal)));
  return (off(diagonal) < off(straight) ? diagonal : straight).map(({ line }) => line);
}

const placeOf = ({ station, side }: ScenePoint): ScenePlace => ({ station, side });

function distance(a: ScenePoint, b: ScenePoint): number {
  const out = ({ side, halfWidth }: ScenePoint) => (side === 'L' ? -halfWidth : halfWidth);
  return Math.hypot(a.station - b.station, out(a) - out(b), a.height - b.height);
}
