import { dot, lineThrough, path, word, type Drawing, type Shape } from '@/app/_figures/drawing/drawing';
import { keepExtremes } from '@/app/_figures/drawing/keep-extremes';
import { decimal } from '@/app/_words/numbers';
import { monthName } from '@/app/_words/times';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { ChartPoint, SignalChart } from '@/lib/assess/signals';
import { chartName } from './names';

const WIDTH = 480;
const HEIGHT = 250;
const [LEFT, RIGHT] = [52, 10];
/** The two strips, one under the other. */
const SMOOTHED = { top: 22, bottom: 106 };
const SUMMED = { top: 134, bottom: 218 };
/** Points that a card has room for. */
const ROOM = 120;

/** How far a series lies from its own past: the smoothed score above, both sums below, each with its limits. */
export function chartDrawing(chart: SignalChart): Drawing {
  const t = words('rates');
  const points = keepExtremes(chart.points, ({ ewma, upper, lower }) => [ewma, upper, lower], ROOM);
  const place = new Map(chart.points.map((point, i) => [point.period, i]));
  const step = (WIDTH - LEFT - RIGHT) / Math.max(1, chart.points.length);
  const x = ({ period }: ChartPoint) => LEFT + ((place.get(period) ?? 0) + 0.5) * step;
  const [first, last] = [chart.points[0], chart.points.at(-1)];
  return {
    width: WIDTH,
    height: HEIGHT,
    label: sentence(chart),
    shapes: [
      ...strip(t('signals.smoothed'), SMOOTHED, chart.ewmaLimit, points, x, [['line', ({ ewma }) => ewma]]),
      ...strip(t('signals.summed'), SUMMED, chart.cusumLimit, points, x, [
        ['line', ({ upper }) => upper],
        ['second', ({ lower }) => (lower === null ? null : -lower)],
      ]),
      ...(first === undefined ? [] : [word(monthName(first.period), LEFT, HEIGHT - 8)]),
      ...(last === undefined || last === first
        ? []
        : [word(monthName(last.period), WIDTH - RIGHT, HEIGHT - 8, 'end')]),
    ],
  };
}

type Line = readonly [ink: 'line' | 'second', of: (point: ChartPoint) => number | null];

function strip(
  name: string,
  { top, bottom }: { top: number; bottom: number },
  limit: number,
  points: readonly ChartPoint[],
  x: (point: ChartPoint) => number,
  lines: readonly Line[],
): Shape[] {
  const values = points.flatMap((point) => lines.map(([, of]) => Math.abs(of(point) ?? 0)));
  const reach = 1.15 * Math.max(limit, ...values);
  const y = (value: number) => (top + bottom) / 2 - (value / reach) * ((bottom - top) / 2);
  return [
    word(name, LEFT, top - 7),
    path('axis', `M${LEFT} ${y(0)}H${WIDTH - RIGHT}`),
    path('limit', `M${LEFT} ${y(limit)}H${WIDTH - RIGHT}M${LEFT} ${y(-limit)}H${WIDTH - RIGHT}`),
    word(`+${decimal(limit, 1)}`, LEFT - 6, y(limit) + 5, 'end'),
    word(`−${decimal(limit, 1)}`, LEFT - 6, y(-limit) + 5, 'end'),
    ...lines.map(([ink, of]) =>
      path(
        ink,
        lineThrough(
          points.map((point) => {
            const value = of(point);
            return value === null ? null : ([x(point), y(value)] as const);
          }),
        ),
      ),
    ),
    ...lines.flatMap(([, of]) =>
      points.flatMap((point) => {
        const value = of(point);
        return value !== null && Math.abs(value) > limit ? [dot('mark', x(point), y(value), 4)] : [];
      }),
    ),
  ];
}

function sentence(chart: SignalChart): string {
  const t = words('rates');
  const { points, why } = chart;
  const name = chartName(chart);
  const [first, last] = [points[0], points.at(-1)];
  if (why !== null || first === undefined || last === undefined)
    return t('signals.why', { name, why: why === null ? t('signals.noMonth') : told(why) });
  const about = {
    name,
    from: monthName(first.period),
    to: monthName(last.period),
    told: alarmsSaid(points),
  };
  return last.ewma === null
    ? t('signals.told', about)
    : t('signals.toldAt', { ...about, score: decimal(last.ewma, 2) });
}

/** More months beyond a limit than this are told as a count. */
const NAMED = 6;

function alarmsSaid(points: readonly ChartPoint[]): string {
  const t = words('rates');
  const alarms = points.flatMap(({ period, alarm }) => (alarm === null ? [] : [{ period, alarm }]));
  if (alarms.length === 0) return t('signals.quietMonths');
  const months = alarms
    .slice(-NAMED)
    .map(({ period, alarm }) =>
      t('signals.beyondOne', { month: monthName(period), side: t(`signals.alarms.${alarm}`) }),
    )
    .join(', ');
  return t(alarms.length > NAMED ? 'signals.beyondLast' : 'signals.beyond', { n: alarms.length, months });
}
