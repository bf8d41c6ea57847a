import { axisOver } from '@/app/_figures/axis';
import { dot, path, word, type Drawing } from '@/app/_figures/drawing/drawing';
import { signed, signedMillimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { TrialView } from '@/lib/access';

const WIDTH = 800;
const HEIGHT = 320;
const LEFT = 64;
const RIGHT = 8;
const TOP = 14;
const BOTTOM = 58;

/** The hangings of one technician at one point: the mean deviation of each from the sheet, mm. */
export interface HangingCell {
  person: string;
  point: string;
  means: number[];
}

interface HangingDrawing {
  /** Point by point, and in each the people in one order. */
  cells: readonly HangingCell[];
  points: readonly string[];
  people: readonly string[];
  /** The smallest of the points' tolerances, mm. */
  tolerance: number;
}

/** The mean of every hanging as a dot, side by side for the technicians at each point. */
export function hangingDrawing({ cells, points, people, tolerance }: HangingDrawing): Drawing {
  const axis = axisOver(
    cells.flatMap(({ means }) => means),
    -1,
    1,
    5,
  );
  const step = (WIDTH - LEFT - RIGHT) / Math.max(1, cells.length);
  const x = (cell: number, place = 0.5) => LEFT + (cell + place) * step;
  const y = (value: number) => TOP + (1 - axis.place(value)) * (HEIGHT - TOP - BOTTOM);
  const digits = axis.ticks.every(Number.isInteger) ? 0 : 1;
  const within = [-tolerance, tolerance].filter((limit) => limit >= axis.low && limit <= axis.high);
  return {
    width: WIDTH,
    height: HEIGHT,
    label: sentence(cells, points),
    shapes: [
      ...axis.ticks.flatMap((tick) => [
        path(tick === 0 ? 'axis' : 'grid', `M${LEFT} ${y(tick)}H${WIDTH - RIGHT}`),
        word(signed(tick, digits), LEFT - 8, y(tick) + 5, 'end'),
      ]),
      ...within.map((limit) => path('limit', `M${LEFT} ${y(limit)}H${WIDTH - RIGHT}`)),
      ...points.flatMap((point, index) => [
        ...(index === 0 ? [] : [path('axis', `M${x(index * people.length, 0)} ${TOP}V${HEIGHT - 8}`)]),
        word(
          point.length > 14 ? `${point.slice(0, 13)}…` : point,
          x(index * people.length, people.length / 2),
          HEIGHT - 12,
          'middle',
        ),
      ]),
      ...cells.flatMap(({ person, means }, cell) => [
        ...(means.length === 0
          ? []
          : [path('farLimit', `M${x(cell, 0.2)} ${y(mean(means))}H${x(cell, 0.8)}`)]),
        ...means.map((value, index) => dot('dot', x(cell, (index + 1) / (means.length + 1)), y(value), 5)),
        word(person.slice(0, 6), x(cell), HEIGHT - 36, 'middle'),
      ]),
    ],
  };
}

/** The hangings of everybody all of whose readings are in. */
export function cellsOf({ plan, runs, readings }: TrialView): HangingCell[] {
  return plan.points.flatMap(({ name, value: nominal }) =>
    plan.people.map((person) => ({
      person,
      point: name,
      means: runs
        .filter((line) => line.person === person && line.point === name)
        .flatMap(({ order }) => {
          const own = (readings ?? []).filter(({ run }) => run === order);
          return own.length < plan.readings ? [] : [mean(own.map(({ value }) => value - nominal))];
        }),
    })),
  );
}

/** The picture of a whole trial. */
export const trialDrawing = (trial: TrialView): Drawing =>
  hangingDrawing({
    cells: cellsOf(trial),
    points: trial.plan.points.map(({ name }) => name),
    people: trial.plan.people,
    tolerance: Math.min(...trial.plan.points.map(({ tolerance }) => tolerance)),
  });

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function sentence(cells: readonly HangingCell[], points: readonly string[]): string {
  const t = words('trials');
  const parts = points.map((point) => {
    const own = cells.filter((cell) => cell.point === point && cell.means.length > 0);
    const each = own.map(({ person, means }) =>
      t('hanging.mean', { person, mean: signedMillimetres(mean(means), 2) }),
    );
    return t('hanging.point', { point, means: each.join(', ') });
  });
  return t('hanging.told', {
    n: cells.reduce((sum, { means }) => sum + means.length, 0),
    points: parts.join(t('hanging.next')),
  });
}
