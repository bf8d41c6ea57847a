import { words } from '@/app/_words/words';
import { signed } from '@/app/_words/numbers';
import type { Section, Side } from '@/lib/measure';
import { path, sized, type Shape } from '../drawing/drawing';
import { r } from './hatched';
import { Labels } from './labels';
import { across, held, type Layout, OVERHANG, railOf } from './measure';
import { placeMark } from './place-mark';
import type { Scene, SceneLength, ScenePlace, ScenePoint, SceneRound } from './scene';

const SIDES: readonly Side[] = ['L', 'R'];
/** Where on a line its number may stand, from one end. */
const ALONG = [0.36, 0.64, 0.28, 0.72, 0.5, 0.2, 0.8];

/** The vehicle from below, front at the left: structure, points, lengths and diagonals, centre pins, and where it was hit. */
export function planView(
  scene: Scene,
  layout: Layout,
  round: SceneRound,
  earlier: SceneRound | null,
): Shape[] {
  const t = words('jobs');
  const labels = new Labels();
  const { left, right } = layout;
  for (const point of scene.points) labels.block(layout.x(point.station), yOf(layout, point), 10);
  for (const { station, deviation } of [...round.pins, ...(earlier?.pins ?? [])])
    labels.block(layout.x(station), pinAt(layout, deviation), 6);
  return [
    sized(t('picture.fromBelow'), left, 14, 13, { strong: true }),
    sized(t('picture.frontLeft'), right, 14, 11, { anchor: 'end' }),
    ...structure(scene, layout),
    ...lengths(layout, scene, round, earlier, labels),
    ...pins(layout, round, earlier, labels),
    ...scene.points.flatMap((point) => marked(layout, point, round)),
    ...labels.shapes,
  ];
}

const yOf = (layout: Layout, { side, halfWidth }: ScenePoint): number => across(layout, side, halfWidth);

/** A plain structure as light context: it is nobody's vehicle. */
function structure({ points, zone }: Scene, layout: Layout): Shape[] {
  const { left, right, plan } = layout;
  const [top, bottom] = [plan.middle - plan.half - OVERHANG + 4, plan.middle + plan.half + OVERHANG - 4];
  const corner = Math.min(24, (bottom - top) / 4);
  const outline =
    `M${r(left + corner)} ${r(top)}H${r(right - corner)}Q${r(right)} ${r(top)} ${r(right)} ${r(top + corner)}` +
    `V${r(bottom - corner)}Q${r(right)} ${r(bottom)} ${r(right - corner)} ${r(bottom)}H${r(left + corner)}` +
    `Q${r(left)} ${r(bottom)} ${r(left)} ${r(bottom - corner)}V${r(top + corner)}Q${r(left)} ${r(top)} ${r(left + corner)} ${r(top)}z`;
  const stations = [...new Set(points.map(({ station }) => station))];
  const members = stations.flatMap((station) => {
    const ends = SIDES.map((side) =>
      points.find((point) => point.station === station && point.side === side),
    );
    const [l, rr] = ends;
    if (!l || !rr) return [];
    const x = layout.x(station);
    return [path('structure', `M${r(x - 3)} ${r(yOf(layout, l))}h6V${r(yOf(layout, rr))}h-6z`)];
  });
  return [
    ...impact(zone, points, layout, top, bottom),
    path('outline', outline),
    ...SIDES.flatMap((side) => {
      const rail = railOf(points, side);
      return rail.length < 2
        ? []
        : [
            path(
              'structure',
              ribbon(
                rail.map((point) => [layout.x(point.station), yOf(layout, point)]),
                5,
              ),
            ),
          ];
    }),
    ...members,
    path('outline', `M${r(left)} ${r(plan.middle)}H${r(right)}`),
  ];
}

/** The section that was hit, as a field with its name. */
function impact(
  zone: Section | null,
  points: readonly ScenePoint[],
  layout: Layout,
  top: number,
  bottom: number,
): Shape[] {
  if (zone === null) return [];
  const own = points.filter(({ section }) => section === zone).map(({ station }) => station);
  if (own.length === 0) return [];
  const others = points.filter(({ section }) => section !== zone).map(({ station }) => station);
  const [first, last] = [Math.min(...own), Math.max(...own)];
  const before = Math.max(...others.filter((station) => station < first));
  const behind = Math.min(...others.filter((station) => station > last));
  const from = Number.isFinite(before) ? layout.x((before + first) / 2) : layout.left + 4;
  const to = Number.isFinite(behind) ? layout.x((behind + last) / 2) : layout.right - 4;
  return [
    path('zone', `M${r(from)} ${r(top + 4)}H${r(to)}V${r(bottom - 4)}H${r(from)}z`),
    sized(words('jobs')('picture.zone'), (from + to) / 2, layout.plan.height - 2, 11, { anchor: 'middle' }),
  ];
}

/** A band of this half thickness along a line. */
export function ribbon(line: readonly (readonly [number, number])[], half: number): string {
  const there = line.map(([x, y]) => `${r(x)} ${r(y - half)}`);
  const back = [...line].reverse().map(([x, y]) => `${r(x)} ${r(y + half)}`);
  return `M${[...there, ...back].join('L')}z`;
}

function lengths(
  layout: Layout,
  { points }: Scene,
  round: SceneRound,
  earlier: SceneRound | null,
  labels: Labels,
): Shape[] {
  const at = ({ station, side }: ScenePlace): [number, number] | null => {
    const point = points.find((one) => one.station === station && one.side === side);
    return point === undefined ? null : [layout.x(station), yOf(layout, point)];
  };
  const draw = (length: SceneLength, ink: 'length' | 'lengthOut' | 'earlierOut', shift: number): Shape[] => {
    const lines = (length.ends === null ? length.either : [length.ends]).flatMap((ends) => {
      const [a, b] = ends.map(at);
      return a && b ? [{ a, b }] : [];
    });
    if (ink !== 'length' && lines.length > 0)
      labels.put(
        // Which of its lines was read is not known, so its number names it.
        length.ends === null ? `${length.name} ${signed(length.deviation)}` : signed(length.deviation),
        12,
        lines.flatMap(({ a, b }) =>
          ALONG.map((f): [number, number] => [
            a[0] + f * (b[0] - a[0]),
            a[1] + f * (b[1] - a[1]) + 4 + shift,
          ]),
        ),
        ink === 'lengthOut',
      );
    return lines.map(({ a, b }) => path(ink, `M${r(a[0])} ${r(a[1] + shift)}L${r(b[0])} ${r(b[1] + shift)}`));
  };
  const [out, within] = [
    round.lengths.filter((one) => !one.within),
    round.lengths.filter((one) => one.within),
  ];
  return [
    ...within.flatMap((length) => draw(length, 'length', 0)),
    ...(earlier?.lengths.filter((one) => !one.within) ?? []).flatMap((length) =>
      draw(length, 'earlierOut', 3),
    ),
    ...out.flatMap((length) => draw(length, 'lengthOut', 0)),
  ];
}

/** Where a centre pin stands: to the right of the vehicle is down. */
const pinAt = (layout: Layout, deviation: number): number =>
  layout.plan.middle + held(layout, deviation) * layout.deviation;

function pins(layout: Layout, round: SceneRound, earlier: SceneRound | null, labels: Labels): Shape[] {
  const { middle } = layout.plan;
  const draw = (of: SceneRound, ink: 'pin' | 'earlierMark', shift: number) =>
    of.pins.flatMap(({ station, deviation, within }) => {
      const x = layout.x(station) + shift;
      const y = pinAt(layout, deviation);
      const side = deviation < 0 ? -1 : 1;
      if (!within)
        labels.put(
          signed(deviation),
          12,
          [
            [x + 22, y + side * 6 + 4],
            [x - 22, y + side * 6 + 4],
            [x, y + side * 16 + 4],
          ],
          ink === 'pin',
        );
      const cross = `M${r(x - 5)} ${r(y - 5)}l10 10m0 -10l-10 10`;
      return [path(ink, Math.abs(y - middle) < 1 ? cross : `M${r(x)} ${r(middle)}V${r(y)}${cross}`)];
    });
  return [...(earlier === null ? [] : draw(earlier, 'earlierMark', 7)), ...draw(round, 'pin', 0)];
}

function marked(layout: Layout, point: ScenePoint, round: SceneRound): Shape[] {
  const [x, y] = [layout.x(point.station), yOf(layout, point)];
  const height = round.heights.find(({ letter, side }) => letter === point.letter && side === point.side);
  const outside = point.side === 'L' ? y - 12 : y + 21;
  return [
    placeMark(height === undefined || point.zero ? 'nothing-found' : height.call, x, y, 6),
    sized(point.letter, x, outside, 12, { anchor: 'middle', strong: true }),
  ];
}
