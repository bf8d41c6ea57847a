import { words } from '@/app/_words/words';
import type { Axis } from './axis';
import { dot, path, word, type Drawing, type Shape } from './drawing/drawing';

/** One line of a drawing of intervals. */
export interface Interval {
  name: string;
  value: number | null;
  low: number | null;
  high: number | null;
  /** Said where there is no figure. */
  why: string | null;
  /** What it is set beside, as a dashed stroke of its own line. */
  reference?: number | null;
}

interface IntervalDrawing {
  /** What is drawn, for those who hear it: `Bias of heights, mm`. */
  what: string;
  axis: Axis;
  intervals: readonly Interval[];
  print: (value: number) => string;
  /** How a tick of the scale is written. */
  tick: (value: number) => string;
  /** The shop's own interval, drawn as two lines through all rows. */
  band?: { low: number | null; high: number | null } | undefined;
  /** A value that means nothing is the matter. */
  neutral?: number | undefined;
}

const WIDTH = 860;
const [LEFT, RIGHT] = [210, 24];
const TOP = 12;
const ROW = 34;
const BOTTOM = 64;
/** As many letters as the names have room for. */
const NAME = 24;

/** A table of figures with their intervals as a chart: names in the order given, a dot on its interval each. */
export function intervalDrawing({
  what,
  axis,
  intervals,
  print,
  tick: written,
  band,
  neutral,
}: IntervalDrawing): Drawing {
  const bottom = TOP + intervals.length * ROW;
  const x = (value: number) => LEFT + axis.place(value) * (WIDTH - LEFT - RIGHT);
  const limits = [band?.low, band?.high].filter((limit) => typeof limit === 'number');
  return {
    width: WIDTH,
    height: bottom + BOTTOM,
    label: sentence(what, intervals, print, band),
    shapes: [
      ...axis.ticks.flatMap((tick) => [
        path('grid', `M${x(tick)} ${TOP}V${bottom}`),
        word(written(tick), x(tick), bottom + 22, 'middle'),
      ]),
      ...(neutral === undefined ? [] : [path('axis', `M${x(neutral)} ${TOP}V${bottom}`)]),
      ...limits.map((limit) => path('limit', `M${x(limit)} ${TOP}V${bottom}`)),
      word(keyOf(what, intervals, limits.length > 0), 0, bottom + 52),
      ...intervals.flatMap((one, i) => rowOf(one, TOP + (i + 0.5) * ROW, axis, x)),
    ],
  };
}

function rowOf(
  { name, value, low, high, why, reference }: Interval,
  y: number,
  axis: Axis,
  x: (value: number) => number,
): Shape[] {
  const shown = name.length > NAME ? `${name.slice(0, NAME - 1)}…` : name;
  if (value === null)
    return [word(shown, 0, y + 5), word(why ?? words('figures')('intervals.noFigure'), LEFT, y + 5)];
  // Beyond the scale the stroke ends in an arrow head.
  const end = (at: number, beyond: boolean, outward: 1 | -1) =>
    beyond
      ? `M${x(at) - 6 * outward} ${y - 6}L${x(at)} ${y}L${x(at) - 6 * outward} ${y + 6}`
      : `M${x(at)} ${y - 6}v12`;
  return [
    word(shown, 0, y + 5),
    ...(reference == null ? [] : [path('target', `M${x(reference)} ${y - 13}v26`)]),
    ...(low === null || high === null
      ? []
      : [
          path(
            'line',
            `M${x(low)} ${y}H${x(high)}${end(low, low < axis.low, -1)}${end(high, high > axis.high, 1)}`,
          ),
        ]),
    dot('dot', x(value), y, 6),
  ];
}

/** What the marks mean, in the picture itself: a file has no page around it. */
function keyOf(what: string, intervals: readonly Interval[], band: boolean): string {
  const beside = intervals.some(({ reference }) => reference != null);
  return words('figures')('intervals.key', {
    what,
    band: band ? 'yes' : 'no',
    beside: beside ? 'yes' : 'no',
  });
}

function sentence(
  what: string,
  intervals: readonly Interval[],
  print: IntervalDrawing['print'],
  band: IntervalDrawing['band'],
): string {
  const t = words('figures');
  const range = (low: number, high: number) => ({ low: print(low), high: print(high) });
  const each = intervals
    .map(({ name, value, low, high, why, reference }) => {
      if (value === null) return t('intervals.unknown', { name, why: why ?? t('intervals.noFigure') });
      const interval =
        low === null || high === null ? t('intervals.noInterval') : t('range', range(low, high));
      const told = { name, value: print(value), interval };
      return reference == null
        ? t('intervals.one', told)
        : t('intervals.besideOne', { ...told, reference: print(reference) });
    })
    .join('; ');
  return band?.low == null || band.high == null
    ? t('intervals.told', { what, each })
    : t('intervals.toldWithShop', { what, each, ...range(band.low, band.high) });
}
