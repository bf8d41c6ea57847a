import { axisOver, type Axis } from '@/app/_figures/axis';
import { dot, path, word, type Drawing, type Shape } from '@/app/_figures/drawing/drawing';
import { namedBelow } from '@/app/_figures/named-below';
import { effectTick } from '@/app/_words/habits';
import { unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import {
  estimatedWords,
  followedTitle,
  type Estimated,
  type Followed,
  type QuarterPoint,
} from './quarter-points';

const WIDTH = 800;
const HEIGHT = 270;
const LEFT = 78;
const RIGHT = 12;
const TOP = 16;
const BOTTOM = 60;

/** Half the width of the shop's box, at most. */
const BOX = 36;

/** An interval may run this many times beyond the farthest figure before the scale stops following it. */
const BEYOND = 1.7;

/** One figure by quarter: a dot on its interval, the shop's interval as a box behind. */
export function quarterDrawing(followed: Followed, points: readonly QuarterPoint[]): Drawing {
  const axis = axisFor(points);
  const step = (WIDTH - LEFT - RIGHT) / Math.max(1, points.length);
  const y = (value: number) => Math.round(TOP + (1 - axis.place(value)) * (HEIGHT - TOP - BOTTOM));
  const x = (index: number) => Math.round(LEFT + (index + 0.5) * step);
  const named = namedBelow(
    points.map(({ quarter }) => quarter),
    step,
  );
  return {
    width: WIDTH,
    height: HEIGHT,
    label: sentence(followed, points),
    shapes: [
      ...axis.ticks.flatMap((tick) => [
        path(tick === 0 ? 'axis' : 'grid', `M${LEFT} ${y(tick)}H${WIDTH - RIGHT}`),
        word(effectTick(tick, 'mm'), LEFT - 8, y(tick) + 5, 'end'),
      ]),
      ...points.flatMap(({ own, shop }, index) => [
        ...(shop === null ? [] : box(shop, x(index), Math.min(BOX, step * 0.4), y)),
        ...interval(own, x(index), y, axis),
        ...(own.value === null ? [] : [dot('dot', x(index), y(own.value), 6)]),
      ]),
      ...named.flatMap(({ at, year }) => [
        word(points[at]?.quarter.slice(5) ?? '', x(at), HEIGHT - 34, 'middle'),
        ...(year === null ? [] : [word(year, x(at), HEIGHT - 7, 'middle')]),
      ]),
    ],
  };
}

function box({ low, high }: Estimated, x: number, half: number, y: (value: number) => number): Shape[] {
  if (low === null || high === null) return [];
  const [top, bottom] = [y(high), Math.max(y(low), y(high) + 3)];
  return [path('farLimit', `M${x - half} ${top}H${x + half}V${bottom}H${x - half}Z`)];
}

/** A stroke across where the interval ends, an arrow head where it goes on beyond the scale. */
function interval({ low, high }: Estimated, x: number, y: (value: number) => number, axis: Axis): Shape[] {
  if (low === null || high === null) return [];
  const end = (at: number, beyond: boolean, up: 1 | -1) =>
    beyond ? `M${x - 6} ${at + 6 * up}L${x} ${at}L${x + 6} ${at + 6 * up}` : `M${x - 6} ${at}h12`;
  return [
    path(
      'line',
      `M${x} ${y(low)}V${y(high)}${end(y(low), low < axis.low, -1)}${end(y(high), high > axis.high, 1)}`,
    ),
  ];
}

function axisFor(points: readonly QuarterPoint[]): Axis {
  const of = (part: 'value' | 'low' | 'high') =>
    points.flatMap(({ own, shop }) => [own[part], shop?.[part] ?? null]).filter((one) => one !== null);
  const reach = BEYOND * Math.max(0.2, ...of('value').map(Math.abs));
  const ends = [...of('low'), ...of('high')].map((end) => Math.max(-reach, Math.min(reach, end)));
  return axisOver([...of('value'), ...ends], 0, 0.25, 4);
}

/** What the figure shows, for those who hear it. */
function sentence(followed: Followed, points: readonly QuarterPoint[]): string {
  const t = words('hand');
  const title = followedTitle(followed);
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return t('quarters.nothing', { title });
  const said = (estimated: Estimated) => estimatedWords(estimated, followed.print);
  const one = ({ quarter, own, shop }: QuarterPoint) =>
    shop === null
      ? t('quarters.notShown', { quarter, own: said(own) })
      : t('quarters.beside', { quarter, own: said(own), shop: said(shop) });
  const span = { title, from: first.quarter, to: last.quarter, unit: unit() };
  return first === last
    ? t('quarters.toldOne', { ...span, one: one(first) })
    : t('quarters.told', { ...span, first: one(first), last: one(last) });
}
