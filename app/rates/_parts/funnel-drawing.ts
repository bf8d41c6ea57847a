import { axisOver } from '@/app/_figures/axis';
import { dot, lineThrough, path, word, type Drawing, type Shape } from '@/app/_figures/drawing/drawing';
import { brief, percent } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { funnelCurves, type FairRate, type FairRates } from '@/lib/assess/rates';
import { groupingInSentence, groupName, placeInSentence } from './words';

const WIDTH = 860;
const HEIGHT = 420;
const [LEFT, RIGHT, TOP, BOTTOM] = [84, 20, 14, 54];
/** Room for a letter and a line as large as they are drawn on a phone. */
const CHARACTER = 12;
const LINE = 22;

/** Rates against the number of jobs behind them, with the limits that chance keeps to around the rate of all. */
export function funnelDrawing(rates: FairRates): Drawing {
  const { groups, funnel, by } = rates;
  const most = Math.max(10, ...groups.map(({ jobs }) => jobs));
  const axis = axisOver([], 0, most * 1.06, 6);
  const x = (jobs: number) => LEFT + axis.place(jobs) * (WIDTH - LEFT - RIGHT);
  const y = (rate: number) => TOP + (1 - rate) * (HEIGHT - TOP - BOTTOM);
  const curves = funnelCurves(funnel, axis.high);
  const curve = (of: 'low95' | 'high95' | 'low998' | 'high998') =>
    lineThrough(
      curves.map((point) => {
        const rate = point[of];
        return rate === null ? null : ([x(point.jobs), y(rate)] as const);
      }),
    );
  const shapes: Shape[] = [
    ...[0, 0.2, 0.4, 0.6, 0.8, 1].flatMap((rate) => [
      path('grid', `M${LEFT} ${y(rate)}H${WIDTH - RIGHT}`),
      word(`${Math.round(rate * 100)} %`, LEFT - 8, y(rate) + 5, 'end'),
    ]),
    ...axis.ticks.map((tick) => word(brief(tick), x(tick), HEIGHT - BOTTOM + 20, 'middle')),
    word(words('rates')('funnel.axis'), (LEFT + WIDTH - RIGHT) / 2, HEIGHT - 8, 'middle'),
    path('axis', `M${LEFT} ${y(0)}H${WIDTH - RIGHT}`),
    path('limit', curve('low95')),
    path('limit', curve('high95')),
    path('farLimit', curve('low998')),
    path('farLimit', curve('high998')),
    ...(funnel.target === null ? [] : [path('target', `M${LEFT} ${y(funnel.target)}H${WIDTH - RIGHT}`)]),
    ...groups.flatMap(({ jobs, rate, funnel: { place } }) =>
      rate === null
        ? []
        : [place === 'inside' ? dot('dot', x(jobs), y(rate), 6) : dot('mark', x(jobs), y(rate), 8)],
    ),
    ...labels(rates, x, y),
  ];
  return { width: WIDTH, height: HEIGHT, label: sentence(by, rates), shapes };
}

/** Names beside the dots: those outside first, then as many others as find room. */
function labels(
  { groups, by }: FairRates,
  x: (jobs: number) => number,
  y: (rate: number) => number,
): Shape[] {
  const taken: { left: number; right: number; top: number }[] = groups.flatMap(({ jobs, rate }) =>
    rate === null ? [] : [{ left: x(jobs) - 8, right: x(jobs) + 8, top: y(rate) - 8 }],
  );
  const outsideFirst = [...groups].sort((a, b) => Number(isInside(a)) - Number(isInside(b)));
  return alike(outsideFirst).flatMap(([group, ...others]): Shape[] => {
    if (group?.rate == null) return [];
    const text = [group, ...others].map(({ name }) => groupName(by, name)).join(', ');
    const width = text.length * CHARACTER;
    const [cx, cy] = [x(group.jobs), y(group.rate)];
    const places = [
      { at: cx + 12, anchor: 'start', left: cx + 12 },
      { at: cx - 12, anchor: 'end', left: cx - 12 - width },
    ] as const;
    for (const { at, anchor, left } of places) {
      const box = { left, right: left + width, top: cy - 8 };
      const free = taken.every(
        (other) => box.right < other.left || box.left > other.right || Math.abs(box.top - other.top) > LINE,
      );
      if (!free || box.left < LEFT || box.right > WIDTH - 4) continue;
      taken.push(box);
      return [word(text, at, cy + besideOf(group.rate), anchor)];
    }
    return [];
  });
}

/** From a dot down to the foot of its label; at both ends of the scale the label keeps off the line that runs there. */
const besideOf = (rate: number): number => (rate < 0.02 ? -8 : rate > 0.98 ? 18 : 5);

/** Groups whose dots lie one upon the other have one label. */
function alike(groups: readonly FairRate[]): FairRate[][] {
  const byPlace = new Map<string, FairRate[]>();
  for (const group of groups) {
    const place = `${group.jobs} ${group.rate}`;
    byPlace.set(place, [...(byPlace.get(place) ?? []), group]);
  }
  return [...byPlace.values()];
}

const isInside = ({ funnel }: FairRate): boolean => funnel.place === 'inside' || funnel.place === null;

function sentence(by: FairRates['by'], { groups, funnel }: FairRates): string {
  const t = words('rates');
  if (funnel.target === null || groups.length === 0) return t('funnel.empty');
  const outside = groups.filter((group) => !isInside(group));
  const told = outside.map(({ name, rate, jobs, funnel: { place } }) =>
    t('funnel.one', {
      name: groupName(by, name),
      rate: rate === null ? t('none') : percent(rate),
      jobs,
      place: place === null ? '' : placeInSentence(place),
    }),
  );
  const all = {
    by: groupingInSentence(by),
    groups: groups.length,
    rate: percent(funnel.target),
  };
  return outside.length === 0
    ? t('funnel.noneInside', all)
    : t('funnel.told', { ...all, rest: groups.length - outside.length, outside: told.join('; ') });
}
