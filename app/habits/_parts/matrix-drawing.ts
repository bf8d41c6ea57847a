import { dot, path, word, type Drawing, type Shape } from '@/app/_figures/drawing/drawing';
import { habitName } from '@/app/_words/habit-name';
import { stateName } from '@/app/_words/habits';
import { words } from '@/app/_words/words';
import { HABITS, type HabitState } from '@/lib/assess/habits';
import type { HabitsOf } from './by-technician';

const LEFT = 330;
const COLUMN = 74;
const TOP = 40;
const ROW = 34;
const KEY = 44;

/** Each state has a shape of its own: what is found is a filled square, what is not a ring, too few a stroke. */
function mark(state: HabitState, x: number, y: number): Shape[] {
  if (state === 'found')
    return [path('farLimit', `M${x - 9} ${y - 9}h18v18h-18Z`), path('line', `M${x - 5} ${y}l4 5l7 -10`)];
  return state === 'not found' ? [dot('dot', x, y, 5)] : [path('limit', `M${x - 7} ${y}h14`)];
}

/** The matrix as a chart: habits down, technicians across in the order of their codes. */
export function matrixDrawing(hands: readonly HabitsOf[]): Drawing {
  const width = LEFT + Math.max(4, hands.length) * COLUMN;
  const bottom = TOP + HABITS.length * ROW;
  const x = (column: number) => LEFT + (column + 0.5) * COLUMN;
  const states: HabitState[] = ['found', 'not found', 'too few readings'];
  return {
    width,
    height: bottom + KEY,
    label: sentence(hands),
    shapes: [
      ...hands.map(({ technician }, i) => word(technician.slice(0, 8), x(i), TOP - 14, 'middle')),
      ...HABITS.flatMap((habit, row) => {
        const y = TOP + (row + 0.5) * ROW;
        return [
          path('grid', `M0 ${y - ROW / 2}H${width}`),
          word(habitName(habit), 0, y + 5),
          ...hands.flatMap(({ cells }, i) => {
            const cell = cells.find((one) => one.habit === habit);
            return cell === undefined ? [] : mark(cell.state, x(i), y);
          }),
        ];
      }),
      path('axis', `M0 ${bottom}H${width}`),
      ...states.flatMap((state, i) => [
        ...mark(state, 12 + i * 190, bottom + 26),
        word(stateName(state), 30 + i * 190, bottom + 31),
      ]),
    ],
  };
}

function sentence(hands: readonly HabitsOf[]): string {
  return words('habits')('picture.told', { hands: hands.map(handSentence).join('. ') });
}

function handSentence({ technician, cells }: HabitsOf): string {
  const t = words('habits');
  const found = cells.filter(({ state }) => state === 'found');
  const few = cells.filter(({ state }) => state === 'too few readings').length;
  const not = cells.length - found.length - few;
  const names =
    found.length === 0 ? t('picture.noneFound') : found.map(({ habit }) => habitName(habit)).join(', ');
  return t('picture.hand', { technician, names, not, few });
}
