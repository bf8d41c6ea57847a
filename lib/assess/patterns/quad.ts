import type { Section, Side } from '@/lib/measure/types';
import type { Change } from './changes';
import type { Missing } from './types';

/** The four lengths between two stations, front P and rear Q: both diagonals and both sides. */
export interface Quad {
  /** P.R–Q.L less P.L–Q.R is the difference of the diagonals that this order states. */
  rightToLeft: Change;
  leftToRight: Change;
  left: Change;
  right: Change;
  /** Distance of the stations, mm. */
  along: number;
}

/** Of a section's lengths the four between the stations farthest apart, or what is missing. */
export function quadOf(changes: readonly Change[], section: Section): Quad | Missing {
  const own = changes.filter((change) => change.section === section);
  let missing: Missing = 'diagonals';
  let best: Quad | null = null;
  for (const leftToRight of own) {
    const [p, q] = leftToRight.ends ?? [];
    if (p?.side !== 'L' || q?.side !== 'R' || p.station === q.station) continue;
    const between = (from: Side, to: Side) =>
      own.find(({ ends }) => {
        const [a, b] = ends ?? [];
        return a?.station === p.station && a.side === from && b?.station === q.station && b.side === to;
      });
    const [rightToLeft, left, right] = [between('R', 'L'), between('L', 'L'), between('R', 'R')];
    if (rightToLeft === undefined) continue;
    if (left === undefined || right === undefined) missing = 'side-lengths';
    else if (best === null || q.station - p.station > best.along)
      best = { rightToLeft, leftToRight, left, right, along: q.station - p.station };
  }
  return best ?? missing;
}

/** The lengths of a quad in the order that its contrasts count them. */
export const lengthsOf = ({ rightToLeft, leftToRight, left, right }: Quad): Change[] => [
  rightToLeft,
  leftToRight,
  left,
  right,
];

/** Difference of the diagonals, mm: positive where the left is pushed to the rear against the right. */
export const DIAGONALS = [1, -1, 0, 0] as const;

/** Both have to be above zero (in the direction of the diagonals) for the sides to differ by less than half of it. */
export const SIDES_ALIKE = [
  [0.5, -0.5, 1, -1],
  [0.5, -0.5, -1, 1],
] as const;
