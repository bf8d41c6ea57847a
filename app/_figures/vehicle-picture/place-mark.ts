import type { Call } from '@/lib/assess';
import { path, type Shape } from '../drawing/drawing';
import type { Ink } from '../drawing/inks';
import { r } from './hatched';

const LOOKS: Record<Call, Ink> = {
  'nothing-found': 'place',
  'likely-gauge': 'placeGauge',
  'likely-body': 'placeBody',
  'likely-both': 'placeBoth',
  undecided: 'placeOpen',
};

/** A point of the vehicle: what is said of it has a shape of its own, beside its colour. */
export function placeMark(call: Call, x: number, y: number, size: number): Shape {
  const ink = LOOKS[call];
  switch (call) {
    case 'nothing-found':
    case 'undecided':
      return path(ink, circle(x, y, size));
    case 'likely-gauge':
      // A bar with its two hangers.
      return path(
        ink,
        `M${r(x - size * 1.35)} ${r(y - size * 0.75)}h${r(size * 2.7)}v${r(size * 1.5)}h${r(-size * 2.7)}z`,
      );
    case 'likely-body':
      return path(ink, `M${r(x - size)} ${r(y - size)}h${r(2 * size)}v${r(2 * size)}h${r(-2 * size)}z`);
    case 'likely-both':
      return path(
        ink,
        `M${r(x)} ${r(y - size * 1.4)}L${r(x + size * 1.4)} ${r(y)}L${r(x)} ${r(y + size * 1.4)}L${r(x - size * 1.4)} ${r(y)}z`,
      );
  }
}

/** A circle as a path, so that it may be dashed. */
export const circle = (x: number, y: number, radius: number): string =>
  `M${r(x - radius)} ${r(y)}a${r(radius)} ${r(radius)} 0 1 0 ${r(2 * radius)} 0a${r(radius)} ${r(radius)} 0 1 0 ${r(-2 * radius)} 0z`;

/** A zero station: the datum rests on it. */
export const zeroMark = (x: number, y: number): Shape => path('place', `M${r(x)} ${r(y)}l7 12h-14z`);
