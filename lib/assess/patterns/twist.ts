import {
  asReadBy,
  type Body,
  type BodyStation,
  type Contrast,
  entry,
  meanOfAll,
  partsOf,
  sumOf,
  thresholdOf,
} from './body';
import { decide } from './decide';
import type { PatternFinding, Untold } from './types';

const pattern = 'twist';

/**
 * Twist: one side up and the other down, growing along the vehicle. With the four corners (front left, front right,
 * rear left, rear right: the means of their points) measured from the plane of the center section, the contrast is
 *
 *     ½ [(F_L − F_R) − (R_L − R_R)]
 *
 * the millimetres by which one side rises and the other falls from one end to the other; positive where the left is
 * high at the front against the rear. An end that was not read counts as lying in the plane. No lifting, tilting or
 * rolling of the datum changes it. Without any single corner half of the threshold has to be left: one corner alone
 * is damage, no twist.
 */
export function twist(body: Body): PatternFinding | Untold {
  const both = body.stations.filter(({ read }) => read[0] && read[1]);
  const front = both.filter(({ section }) => section === 'front');
  const rear = both.filter(({ section }) => section === 'rear');
  if (!body.zeros.every(({ read }) => read[0] && read[1]))
    return { pattern, section: null, missing: 'heights' };
  if (front.length + rear.length === 0) return { pattern, section: null, missing: 'end-heights' };

  const corners: [weight: number, corner: Contrast][] = [];
  for (const [stations, sign] of [
    [front, 1],
    [rear, -1],
  ] as const) {
    if (stations.length === 0) continue;
    for (const s of [0, 1] as const)
      corners.push([
        (sign * (s === 0 ? 1 : -1)) / 2,
        meanOfAll(stations.map((station) => fromPlane(body, station, s))),
      ]);
  }
  const whole = sumOf(...corners);
  const without = corners.map(([weight, corner]) => sumOf([1, whole], [-weight, corner]));
  const threshold = thresholdOf([...front, ...rear, ...body.zeros]);
  return decide({
    pattern,
    section: null,
    side: null,
    threshold,
    asRead: asReadBy(body, whole),
    parts: (n) => partsOf(body, [whole, ...without].slice(0, n)),
    conditions: without.map(() => ({ limit: threshold / 2, otherwise: 'one-place' })),
  });
}

/** Height of a point from the plane of the center section: through the means of both zero stations, rolled as they are. */
function fromPlane({ zeros: [a, b] }: Body, { x, at }: BodyStation, s: 0 | 1): Contrast {
  const mean = ([l, r]: readonly [number, number]) => meanOfAll([entry(l), entry(r)]);
  const roll = ([l, r]: readonly [number, number]) => sumOf([0.5, entry(l)], [-0.5, entry(r)]);
  const wb = (x - a.x) / (b.x - a.x);
  const side = s === 0 ? 1 : -1;
  return sumOf(
    [1, entry(at[s])],
    [wb - 1, mean(a.at)],
    [-wb, mean(b.at)],
    [-side / 2, roll(a.at)],
    [-side / 2, roll(b.at)],
  );
}
