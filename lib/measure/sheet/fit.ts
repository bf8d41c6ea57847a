import { lengthEnds } from '@/lib/measure/dimension';
import type { Side } from '@/lib/measure/types';
import { LENGTH_KINDS, lengthName, type LengthKind, type LengthRow, type PointRow } from './rows';
import { sidesOf } from './sides';

/** Half of the last place in which a sheet states its values, mm: whole millimetres. */
const ROUNDING = 0.5;
/** A value that was typed in inches is rounded to half an inch at worst, mm. */
const INCH_SLACK = 13;

/** Where an end is, as far as the sheet says; across is to the right. */
interface Place {
  side: Side | null;
  along: number;
  across: number | null;
  up: number | null;
}

/** What the coordinates of both ends come to, mm. */
export interface ExpectedLength {
  kind: LengthKind | null;
  /** From point to point. Null where a half width or a height of an end is not said. */
  pointToPoint: number | null;
  /** Projected into the datum plane, as pointers of equal length read it. Null where a half width is not said. */
  parallel: number | null;
  /** No length between the two can be shorter. */
  least: number;
  /** How far a sheet value may be off: its tolerance and the rounding of all values. */
  slack: number;
}

/** `unknown`: the sheet does not say enough of where the ends are, and nothing speaks against it. */
export type FitAs = 'point-to-point' | 'parallel' | 'either' | 'unknown';

/** How a sheet value stands beside the coordinates of its ends. */
export interface LengthFit {
  /** Null where it fits in no way. */
  fits: FitAs | null;
  kind: LengthKind | null;
  /** What the coordinates come to for the kind that is said, or for each kind that it may be. */
  expected: ExpectedLength[];
  /** The other kind, where that one would fit. */
  otherKind: LengthKind | null;
  /** True where the value would fit if it were inches. */
  asInches: boolean;
}

/**
 * Holds a length against the stations, half widths and heights of its ends. A tram gauge with pointers set to the
 * heights of the sheet measures from point to point; with equal pointers, set parallel to the datum, it measures the
 * projection. Sheets state the one or the other: either is accepted, and said.
 */
export function fitOf(length: LengthRow, points: readonly PointRow[]): LengthFit {
  const all = expectedLengths(length, points);
  if (all.length === 0)
    return { fits: 'unknown', kind: length.kind, expected: [], otherKind: null, asInches: false };
  const said = length.kind === null ? all : all.filter(({ kind }) => kind === null || kind === length.kind);
  const rest = all.filter((one) => !said.includes(one));
  const fitting = said.find((one) => fitsAs(length.nominal, one) !== null);
  const other = fitting === undefined ? rest.find((one) => fitsAs(length.nominal, one) !== null) : undefined;
  const inches = length.nominal * 25.4;
  return {
    fits: fitting === undefined ? null : fitsAs(length.nominal, fitting),
    kind: fitting?.kind ?? length.kind,
    expected: unlike(said),
    otherKind: other?.kind ?? null,
    asInches: fitting === undefined && all.some((one) => near(inches, one, INCH_SLACK)),
  };
}

/** The kind of a length whose sheet does not say it: by its ends, else by what fits better. */
export function kindOf(length: LengthRow, points: readonly PointRow[]): LengthKind | null {
  const all = expectedLengths(length, points);
  const kinds = [...new Set(all.map(({ kind }) => kind))];
  if (kinds.length === 1) return kinds[0] ?? null;
  const off = (one: ExpectedLength) =>
    Math.min(
      ...[one.pointToPoint, one.parallel].map((value) =>
        value === null ? Infinity : Math.abs(length.nominal - value),
      ),
    );
  const [best] = [...all].sort((a, b) => off(a) - off(b));
  return best !== undefined && Number.isFinite(off(best)) ? best.kind : null;
}

/** What the value may mean beside these coordinates; null where it fits in no way. */
function fitsAs(nominal: number, { pointToPoint, parallel, least, slack }: ExpectedLength): FitAs | null {
  if (pointToPoint === null && parallel === null) return nominal >= least - slack ? 'unknown' : null;
  const is = (value: number | null) => value !== null && Math.abs(nominal - value) <= slack;
  if (is(pointToPoint)) return is(parallel) ? 'either' : 'point-to-point';
  return is(parallel) ? 'parallel' : null;
}

const near = (value: number, { pointToPoint, parallel }: ExpectedLength, slack: number): boolean =>
  [pointToPoint, parallel].some((one) => one !== null && Math.abs(value - one) <= slack);

/** All that a length may be, by its ends: one pair of places, or more where both sides share the letters. */
function expectedLengths(length: LengthRow, points: readonly PointRow[]): ExpectedLength[] {
  const ends = lengthEnds(lengthName(length));
  if (ends === null) return [];
  const [from, to] = ends.map((end) => placesOf(end, points));
  const found: ExpectedLength[] = [];
  for (const a of from ?? []) {
    for (const b of to ?? []) found.push(expected(a, b, length.tolerance));
  }
  return found.sort((a, b) => order(a) - order(b));
}

const order = ({ kind }: ExpectedLength) => (kind === null ? -1 : LENGTH_KINDS.indexOf(kind));

function placesOf(end: { point: string; side: Side | null }, points: readonly PointRow[]): Place[] {
  return points
    .filter(({ letter }) => letter === end.point)
    .flatMap(({ side: of, station, halfWidth, height }) =>
      sidesOf(of)
        .filter((side) => end.side === null || side === end.side)
        .flatMap((side): Place[] => {
          if (station === null) return [];
          if (side === null) return [{ side, along: station, across: 0, up: null }];
          const across = halfWidth === null ? null : side === 'L' ? -halfWidth : halfWidth;
          return [{ side, along: station, across, up: height }];
        }),
    );
}

function expected(a: Place, b: Place, tolerance: number): ExpectedLength {
  const along = b.along - a.along;
  const across = a.across === null || b.across === null ? null : b.across - a.across;
  const up = a.up === null || b.up === null ? null : b.up - a.up;
  const least = Math.hypot(along, across ?? 0, 0);
  const whole = Math.hypot(along, across ?? 0, up ?? 0);
  // Each coordinate difference holds two rounded values, and is felt by its share of the length.
  const spread = whole === 0 ? 0 : (Math.abs(along) + Math.abs(across ?? 0) + Math.abs(up ?? 0)) / whole;
  return {
    kind: a.side === null || b.side === null ? null : a.side === b.side ? 'straight' : 'diagonal',
    pointToPoint: across === null || up === null ? null : whole,
    parallel: across === null ? null : least,
    least,
    slack: tolerance + ROUNDING + 2 * ROUNDING * spread,
  };
}

/** Left and right that come to the same are told once. */
function unlike(all: readonly ExpectedLength[]): ExpectedLength[] {
  return all.filter(
    (one, index) =>
      all.findIndex(
        (other) =>
          other.kind === one.kind &&
          Math.abs(other.least - one.least) < 0.05 &&
          Math.abs((other.pointToPoint ?? 0) - (one.pointToPoint ?? 0)) < 0.05,
      ) === index,
  );
}
