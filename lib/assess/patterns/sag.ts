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

const pattern = 'sag';
const middle = (stations: readonly BodyStation[]): number =>
  stations.reduce((sum, { x }) => sum + x, 0) / stations.length;

/**
 * Sag: the center section low (negative) or high against the straight line through both ends, on both sides alike.
 * Of the means of the sections B_f, B_c, B_r at the mean stations x_f, x_c, x_r the contrast on one side is
 *
 *     B_c − u B_f − (1 − u) B_r,   u = (x_r − x_c) / (x_r − x_f)
 *
 * which no lifting and no tilting of the datum changes; sag is the mean of both sides. Each side has to show half of
 * the threshold by itself, and so have the front end of one side with the rear end of the other (opposite corners up are
 * no sag), and the readings without any single station of the ends (its height taken to lie
 * on the line through the zero stations): one bent end is a damaged point.
 */
export function sag(body: Body): PatternFinding | Untold {
  const both = body.stations.filter(({ read }) => read[0] && read[1]);
  const of = (section: string) => both.filter((station) => station.section === section);
  const [front, center, rear] = [of('front'), of('center'), of('rear')];
  if (center.length === 0) return { pattern, section: null, missing: 'heights' };
  if (front.length === 0) return { pattern, section: null, missing: 'front-heights' };
  if (rear.length === 0) return { pattern, section: null, missing: 'rear-heights' };

  const u = (middle(rear) - middle(center)) / (middle(rear) - middle(front));
  const mean = (stations: readonly BodyStation[], s: 0 | 1) =>
    meanOfAll(stations.map(({ at }) => entry(at[s])));
  /** With the front end of one side and the rear end of one side. */
  const withEnds = (f: 0 | 1, r: 0 | 1): Contrast =>
    sumOf([0.5, mean(center, f)], [0.5, mean(center, r)], [-u, mean(front, f)], [u - 1, mean(rear, r)]);
  const sides = [withEnds(0, 0), withEnds(1, 1), withEnds(0, 1), withEnds(1, 0)];
  const whole = meanOfAll(sides.slice(0, 2));
  const without = [
    ...front.map((station) => sumOf([1, whole], [u / front.length, above(body, station)])),
    ...rear.map((station) => sumOf([1, whole], [(1 - u) / rear.length, above(body, station)])),
  ];
  const threshold = thresholdOf([...front, ...center, ...rear]);
  return decide({
    pattern,
    section: null,
    side: null,
    threshold,
    asRead: asReadBy(body, whole),
    parts: (n) => partsOf(body, [whole, ...sides, ...without].slice(0, n)),
    conditions: [
      ...sides.map(() => ({ limit: threshold / 2, otherwise: 'one-side' as const })),
      ...without.map(() => ({ limit: threshold / 2, otherwise: 'one-place' as const })),
    ],
  });
}

/** How far a station lies above the line through the zero stations, mean of both sides. */
function above({ zeros: [a, b] }: Body, { x, at }: BodyStation): Contrast {
  const mean = (entries: readonly number[]) => meanOfAll(entries.map(entry));
  const wb = (x - a.x) / (b.x - a.x);
  return sumOf([1, mean(at)], [wb - 1, mean(a.at)], [-wb, mean(b.at)]);
}
