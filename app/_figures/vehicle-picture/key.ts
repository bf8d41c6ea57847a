import { words } from '@/app/_words/words';
import { callName } from '@/app/_words/verdicts';
import type { Call } from '@/lib/assess';
import { path, sized, type Shape } from '../drawing/drawing';
import { full, hatched } from './hatched';
import { widthOf } from './labels';
import type { Layout } from './measure';
import { circle, placeMark, zeroMark } from './place-mark';
import type { SceneRound } from './scene';

const ROW = 24;
const SIZE = 12;

/** What the signs mean: only of those that are there. @returns the shapes and how high they stand. */
export function keyOf(
  layout: Layout,
  round: SceneRound,
  earlier: SceneRound | null,
): { shapes: Shape[]; height: number } {
  const t = words('jobs');
  const heights = round.heights;
  const judged = heights.some(({ parts }) => parts !== null);
  const calls = [...new Set(heights.map(({ call }) => call))];
  const items: [Shape[], string][] = [
    [[path('reading', 'M2 0h20')], t('picture.key.read')],
    ...(judged
      ? ([
          [[full(8, 8, -7, 7)], t('picture.key.body')],
          [hatched(8, 8, -7, 7), t('picture.key.gauge')],
        ] satisfies [Shape[], string][])
      : []),
    [[path('tolerance', 'M4 -7h16v14h-16z')], t('picture.key.tolerance')],
    ...calls.map((call: Call): [Shape[], string] => [[placeMark(call, 12, 0, 6)], callName(call)]),
    [[zeroMark(12, -6)], t('picture.key.zero')],
    ...(round.lengths.some(({ within }) => !within)
      ? [[[path('lengthOut', 'M1 5L23 -5')], t('picture.key.lengthOut')] satisfies [Shape[], string]]
      : []),
    ...(round.pins.length > 0
      ? [[[path('pin', 'M7 -5l10 10m0 -10l-10 10')], t('picture.key.pin')] satisfies [Shape[], string]]
      : []),
    ...(round.datum.some(({ front, rear }) => Math.max(Math.abs(front.error), Math.abs(rear.error)) >= 1.5)
      ? [[[path('tilt', 'M0 4L24 -4')], t('picture.key.tilt')] satisfies [Shape[], string]]
      : []),
    ...(earlier === null
      ? []
      : [
          [
            [path('earlier', 'M12 8V-4'), path('earlierMark', circle(12, -4, 4))],
            t('picture.key.earlier', { round: earlier.name }),
          ] satisfies [Shape[], string],
          ...(earlier.lengths.some(({ within }) => !within)
            ? [
                [
                  [path('earlierOut', 'M0 5L24 -5')],
                  t('picture.key.earlierOut', { round: earlier.name }),
                ] satisfies [Shape[], string],
              ]
            : []),
        ]),
  ];
  const shapes: Shape[] = [];
  let [x, y] = [layout.left, ROW / 2];
  for (const [sign, text] of items) {
    const width = 32 + widthOf(text, SIZE) + 12;
    if (x > layout.left && x + width > layout.width) [x, y] = [layout.left, y + ROW];
    shapes.push(...sign.map((shape) => moved(shape, x, y)), sized(text, x + 30, y + 4, SIZE));
    x += width;
  }
  return { shapes, height: y + ROW / 2 + 4 };
}

/** A shape elsewhere: the paths of this picture begin every stroke with an absolute `M`, and go on with it. */
export function moved(shape: Shape, dx: number, dy: number): Shape {
  if (shape.kind !== 'path') return { ...shape, x: shape.x + dx, y: shape.y + dy };
  return { ...shape, d: movedPath(shape.d, dx, dy) };
}

/** Absolute commands (capitals) are moved, relative ones stay. */
function movedPath(d: string, dx: number, dy: number): string {
  return d.replaceAll(/([MLHVQ])([^A-Za-z]*)/g, (_, command: string, numbers: string) => {
    const values = numbers
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    const shift = (value: number, i: number) =>
      command === 'H' ? value + dx : command === 'V' ? value + dy : value + (i % 2 === 0 ? dx : dy);
    return command + values.map((value, i) => Math.round(shift(value, i) * 10) / 10).join(' ');
  });
}
