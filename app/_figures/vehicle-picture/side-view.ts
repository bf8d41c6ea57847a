import { words } from '@/app/_words/words';
import { signed } from '@/app/_words/numbers';
import type { Side } from '@/lib/measure';
import { path, sized, type Shape } from '../drawing/drawing';
import { full, hatched, r } from './hatched';
import { Labels, widthOf } from './labels';
import { held, isTower, type Layout, railOf } from './measure';
import { ribbon } from './plan-view';
import { circle, zeroMark } from './place-mark';
import type { Scene, SceneHeight, ScenePoint, SceneRound } from './scene';

/**
 * One side of the vehicle, front at the left: every point at its height over the datum plane, its tolerance as a band,
 * and what it deviates at the larger scale, the body's part full, the gauge's part hatched.
 */
export function sideView(
  scene: Scene,
  layout: Layout,
  side: Side,
  round: SceneRound,
  earlier: SceneRound | null,
): Shape[] {
  const t = words('jobs');
  const own = scene.points.filter((point) => point.side === side).sort((a, b) => a.station - b.station);
  const datum = layout.band.datum;
  const labels = new Labels();
  const y = ({ height }: ScenePoint) => datum - height * layout.along;
  const rail = railOf(scene.points, side);
  const heightOf = (of: SceneRound, point: ScenePoint) =>
    of.heights.find((one) => one.letter === point.letter && one.side === side);
  const bars = own.map((point) => ({
    point,
    now: heightOf(round, point),
    before: earlier === null ? undefined : heightOf(earlier, point),
  }));
  return [
    sized(t(`picture.side.${side}`), layout.left, 14, 13, { strong: true }),
    ...(rail.length < 2
      ? []
      : [
          path(
            'structure',
            ribbon(
              rail.map((point) => [layout.x(point.station), y(point)]),
              5,
            ),
          ),
        ]),
    ...own
      .filter((point) => isTower(own, point))
      .map((point) => {
        const [x, foot] = [layout.x(point.station), railAt(rail, point.station, datum, layout)];
        return path(
          'structure',
          `M${r(x - 10)} ${r(foot)}L${r(x - 5)} ${r(y(point))}h10L${r(x + 10)} ${r(foot)}z`,
        );
      }),
    path('datum', `M${r(layout.left)} ${r(datum)}H${r(layout.right)}`),
    ...tilt(layout, round, side),
    ...bars.flatMap(({ point, now }) => (now === undefined ? [] : [band(layout, point, now, y(point))])),
    ...bars.flatMap(({ point, now, before }) => [
      ...(before === undefined ? [] : earlierBar(layout, point, before, y(point))),
      ...(now === undefined ? [] : bar(layout, point, now, y(point))),
      ...(point.zero ? [zeroMark(layout.x(point.station), datum)] : []),
    ]),
    ...labelled(scene, layout, labels, bars, y),
  ];
}

interface Barred {
  point: ScenePoint;
  now: SceneHeight | undefined;
  before: SceneHeight | undefined;
}

/** All words of a side: none over another, and none over the sign of a zero station. */
function labelled(
  { points }: Scene,
  layout: Layout,
  labels: Labels,
  bars: readonly Barred[],
  y: (point: ScenePoint) => number,
): Shape[] {
  const { datum } = layout.band;
  const zeros = points.filter(({ zero }) => zero).map(({ station }) => layout.x(station));
  for (const x of zeros) labels.block(x, datum + 6, 8);
  for (const { point, now, before } of bars) label(layout, labels, point, now, before, y(point));
  const text = words('jobs')('picture.datum');
  const half = widthOf(text, 11) / 2;
  const middle = zeros.reduce((sum, x) => sum + x / zeros.length, 0);
  labels.put(
    text,
    11,
    [
      [middle, datum + 14],
      [layout.right - half, datum + 14],
      [layout.left + half, datum + 14],
    ],
    false,
  );
  return labels.shapes;
}

/** Height of the rail at a station, on the straight line between its points. */
function railAt(rail: readonly ScenePoint[], station: number, datum: number, { along }: Layout): number {
  const front = [...rail].reverse().find((point) => point.station <= station);
  const rear = rail.find((point) => point.station >= station);
  const [a, b] = [front ?? rear, rear ?? front];
  if (a === undefined || b === undefined) return datum;
  const share = a.station === b.station ? 0 : (station - a.station) / (b.station - a.station);
  return datum - (a.height + share * (b.height - a.height)) * along;
}

const ACROSS = { band: 13, bar: 7, tick: 10 } as const;

function band(layout: Layout, { station }: ScenePoint, { tolerance }: SceneHeight, y: number): Shape {
  const [x, half] = [layout.x(station), tolerance * layout.deviation];
  return path(
    'tolerance',
    `M${r(x - ACROSS.band)} ${r(y - half)}h${2 * ACROSS.band}v${r(2 * half)}h${-2 * ACROSS.band}z`,
  );
}

const tipOf = (layout: Layout, y: number, deviation: number): number =>
  y - held(layout, deviation) * layout.deviation;

function bar(layout: Layout, { station }: ScenePoint, height: SceneHeight, y: number): Shape[] {
  const x = layout.x(station);
  const { parts, deviation } = height;
  const read = tipOf(layout, y, deviation);
  const shapes: Shape[] = [];
  if (parts === null) shapes.push(path('unjudged', `M${r(x - 4)} ${r(y)}h8V${r(read)}h-8z`));
  else {
    const [gauge, body] = [tipOf(layout, y, parts.gauge), tipOf(layout, y, parts.body)];
    if (Math.abs(body - y) >= 1) shapes.push(full(x - ACROSS.bar, ACROSS.bar, y, body));
    if (Math.abs(gauge - y) >= 1) shapes.push(...hatched(x, ACROSS.bar, y, gauge));
  }
  const longest = [deviation, parts?.gauge ?? 0, parts?.body ?? 0].reduce((a, b) =>
    Math.abs(b) > Math.abs(a) ? b : a,
  );
  if (Math.abs(longest) > layout.limit) {
    const cut = (y + tipOf(layout, y, longest)) / 2;
    shapes.push(path('break', `M${r(x - 10)} ${r(cut + 5)}l20 -6m-20 11l20 -6`));
  }
  shapes.push(path('reading', `M${r(x - ACROSS.tick)} ${r(read)}h${2 * ACROSS.tick}`));
  return shapes;
}

function earlierBar(layout: Layout, { station }: ScenePoint, { deviation }: SceneHeight, y: number): Shape[] {
  const [x, read] = [layout.x(station), tipOf(layout, y, deviation)];
  return [path('earlier', `M${r(x)} ${r(y)}V${r(read)}`), path('earlierMark', circle(x, read, 4))];
}

/** The number beyond the bar, the letter on its other side. */
function label(
  layout: Layout,
  labels: Labels,
  { station, letter }: ScenePoint,
  now: SceneHeight | undefined,
  before: SceneHeight | undefined,
  y: number,
): void {
  const x = layout.x(station);
  const shown = [now, before].flatMap((one) =>
    one === undefined ? [] : [one.deviation, one.parts?.gauge ?? 0, one.parts?.body ?? 0],
  );
  const half = (now ?? before)?.tolerance ?? 0;
  const ends = [...shown, half, -half].map((value) => tipOf(layout, y, value));
  const [top, bottom] = [Math.min(...ends), Math.max(...ends)];
  const up = (now?.deviation ?? before?.deviation ?? 0) >= 0;
  const beside = (at: number, step: number): [number, number][] => [0, 1, 2].map((k) => [x, at + k * step]);
  const [number, name] = up
    ? [beside(top - 5, -13), beside(bottom + 13, 13)]
    : [beside(bottom + 13, 13), beside(top - 5, -13)];
  labels.put(letter, 12, name);
  if (now !== undefined) labels.put(signed(now.deviation), 12, number, !now.within);
  else if (before !== undefined) labels.put(signed(before.deviation), 12, number, false);
}

/** The datum plane as the zero gauges hang it, where they are likely off: it lies as far off as they do. */
function tilt(layout: Layout, { datum }: SceneRound, side: Side): Shape[] {
  const line = datum.find((one) => one.side === side);
  if (line === undefined) return [];
  const { front, rear } = line;
  if (Math.max(Math.abs(front.error), Math.abs(rear.error)) < 1.5) return [];
  const slope = (rear.error - front.error) / (rear.station - front.station);
  const base = layout.band.datum;
  const [x1, x2] = [layout.x(front.station), layout.x(rear.station)];
  const perUnit = slope / layout.along;
  const points = [layout.left, layout.right]
    .map((x) => {
      const error = front.error + (x - x1) * perUnit;
      if (Math.abs(error) <= layout.limit || perUnit === 0) return [x, error] as const;
      const edge = Math.sign(error) * layout.limit;
      return [x1 + (edge - front.error) / perUnit, edge] as const;
    })
    .map(([x, error]) => `${r(x)} ${r(base - held(layout, error) * layout.deviation)}`);
  return x1 === x2 ? [] : [path('tilt', `M${points.join('L')}`)];
}
