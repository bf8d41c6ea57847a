import { lengthEnds, type LengthEnd } from '@/lib/measure/dimension';
import {
  kindOf,
  lengthName,
  sidesOf,
  type LengthKind,
  type PointRow,
  type SheetRows,
} from '@/lib/measure/sheet';
import type { Side } from '@/lib/measure/types';

/** What a stroke or mark means; the colour is the theme's (sheet-picture.module.css). */
export type Look =
  | 'floor'
  | 'centerline'
  | 'datum'
  | 'station'
  | 'foot'
  | 'straight'
  | 'diagonal'
  | 'unfit'
  | 'point'
  | 'zero'
  | 'unsure';

export type SheetShape =
  | { kind: 'line'; look: Look; d: string }
  | { kind: 'mark'; look: 'point' | 'zero' | 'unsure'; x: number; y: number }
  | { kind: 'letter'; x: number; y: number; text: string };

export interface SheetLayout {
  width: number;
  height: number;
  /** Where the names of both views stand. */
  below: { y: number };
  side: { y: number };
  datum: { y: number };
  shapes: SheetShape[];
}

const WIDTH = 900;
const MARGIN = 44;
const TITLE = 26;
const GAP = 30;
/** Where a sheet does not say a half width, its point is drawn there, hollow, mm. */
const USUAL_HALF_WIDTH = 420;
/** A typing slip of a digit too many must not shrink the vehicle to a dot. */
const WIDEST = 1_500;
const [HIGHEST, LOWEST] = [2_000, -300];

interface Placed {
  row: PointRow;
  side: Side | null;
  x: number;
  y: number;
}

/**
 * The points and lengths of a sheet as a vehicle from below (front at the left, its left side at the top, as it is seen
 * by whoever lies under it) and from the side, to one scale. Points without a station are not drawn.
 * @param unfit places in the list of those lengths that cannot fit.
 * @returns null where there is nothing to draw.
 */
export function layOut({ points, lengths }: SheetRows, unfit: ReadonlySet<number>): SheetLayout | null {
  const placed = points.filter(({ station, letter }) => station !== null && letter !== '');
  if (placed.length === 0) return null;
  const stations = placed.map(({ station }) => station ?? 0);
  const [first, last] = [Math.min(...stations), Math.max(...stations)];
  const span = Math.max(last - first, 500);
  const scale = (WIDTH - 2 * MARGIN) / span;
  const widths = placed.map(({ halfWidth }) => Math.min(halfWidth ?? USUAL_HALF_WIDTH, WIDEST));
  const heights = placed.flatMap(({ height }) => (height === null ? [] : [within(height)]));
  const half = Math.max(60, Math.max(...widths) * scale);
  const tall = Math.max(30, Math.max(0, ...heights) * scale);
  const deep = Math.max(0, -Math.min(0, ...heights) * scale);
  const middle = TITLE + 24 + half;
  const sideTitle = middle + half + GAP + TITLE;
  const base = sideTitle + 26 + tall;
  const height = base + deep + 26;
  const x = (station: number) => tidy(MARGIN + (station - first) * scale);

  const below = placed.flatMap((row) =>
    sidesOf(row.side).map((side): Placed => {
      const across = side === null ? 0 : Math.min(row.halfWidth ?? USUAL_HALF_WIDTH, WIDEST) * scale;
      return { row, side, x: x(row.station ?? 0), y: tidy(middle + (side === 'L' ? -across : across)) };
    }),
  );
  const shapes: SheetShape[] = [
    ...floor(below),
    line('centerline', [
      [MARGIN / 2, middle],
      [WIDTH - MARGIN / 2, middle],
    ]),
    ...[...new Set(placed.filter(({ zero }) => zero).map(({ station }) => station ?? 0))].map((station) =>
      line('station', [
        [x(station), TITLE + 8],
        [x(station), base + deep + 8],
      ]),
    ),
    ...lengths.flatMap((length, index) => {
      const ends = lengthEnds(lengthName(length));
      if (ends === null) return [];
      const kind = length.kind ?? kindOf(length, points);
      const look = unfit.has(index) ? 'unfit' : kind === 'diagonal' ? 'diagonal' : 'straight';
      return pairsOf(ends, kind, below).map(([a, b]) => line(look, [at(a), at(b)]));
    }),
    ...below.flatMap(({ row, side, x: px, y }): SheetShape[] => [
      { kind: 'mark', look: row.halfWidth === null && side !== null ? 'unsure' : lookOf(row), x: px, y },
      { kind: 'letter', x: px, y: side === 'L' ? y - 13 : y + 23, text: row.letter },
    ]),
    line('datum', [
      [MARGIN / 2, base],
      [WIDTH - MARGIN / 2, base],
    ]),
    ...sideView(placed, (row) => [x(row.station ?? 0), tidy(base - within(row.height ?? 0) * scale)], base),
  ];
  return {
    width: WIDTH,
    height: Math.ceil(height),
    below: { y: TITLE - 8 },
    side: { y: Math.round(sideTitle - 8) },
    datum: { y: Math.round(base) },
    shapes,
  };
}

const at = ({ x, y }: Placed): [number, number] => [x, y];
const within = (height: number) => Math.min(HIGHEST, Math.max(LOWEST, height));
const tidy = (value: number) => Math.round(value * 10) / 10;
const lookOf = ({ zero }: PointRow) => (zero ? 'zero' : 'point');
const line = (look: Look, points: readonly (readonly [number, number])[]): SheetShape => ({
  kind: 'line',
  look,
  d: points.map(([px, py], index) => `${index === 0 ? 'M' : 'L'}${tidy(px)} ${tidy(py)}`).join(''),
});

/** What joins the points of each side, so that a vehicle is seen and not a cloud of dots. */
function floor(below: readonly Placed[]): SheetShape[] {
  const edge = (side: Side) =>
    below
      .filter((one) => one.side === side)
      .sort((a, b) => a.x - b.x)
      .map(at);
  const [left, right] = [edge('L'), edge('R')];
  if (left.length + right.length < 3) return [];
  const whole = line('floor', [...left, ...right.reverse()]);
  return whole.kind === 'line' ? [{ ...whole, d: `${whole.d}Z` }] : [];
}

/** The places that a length joins: two for a name that both sides share. */
function pairsOf(
  ends: readonly [LengthEnd, LengthEnd],
  kind: LengthKind | null,
  below: readonly Placed[],
): [Placed, Placed][] {
  const [from, to] = ends.map((end) =>
    below.filter(({ row, side }) => row.letter === end.point && (end.side === null || side === end.side)),
  );
  return (from ?? []).flatMap((a) =>
    (to ?? []).flatMap((b): [Placed, Placed][] => {
      if (a === b) return [];
      const drawn = a.side === null || b.side === null || kind === null ? null : a.side === b.side;
      return drawn === null || drawn === (kind === 'straight') ? [[a, b]] : [];
    }),
  );
}

/** Letters closer than this would be drawn over each other. */
const LETTER = 18;

/** Heights above the datum; points of one station whose heights are close share the room of a letter. */
function sideView(
  placed: readonly PointRow[],
  place: (row: PointRow) => [number, number],
  base: number,
): SheetShape[] {
  const spots = placed
    .filter(({ height }) => height !== null)
    .map((row) => ({ row, x: place(row)[0], y: place(row)[1] }))
    .sort((a, b) => a.x - b.x || a.y - b.y);
  const names: { x: number; y: number; letters: Set<string> }[] = [];
  for (const { row, x, y } of spots) {
    const last = names.at(-1);
    if (last !== undefined && last.x === x && y - last.y < LETTER) last.letters.add(row.letter);
    else names.push({ x, y, letters: new Set([row.letter]) });
  }
  return [
    ...spots.map(({ x, y }) =>
      line('foot', [
        [x, base],
        [x, y],
      ]),
    ),
    ...spots.map(({ row, x, y }): SheetShape => ({ kind: 'mark', look: lookOf(row), x, y })),
    ...names.map(({ x, y, letters }): SheetShape => ({
      kind: 'letter',
      x,
      y: y - 13,
      text: [...letters].join(' '),
    })),
  ];
}
