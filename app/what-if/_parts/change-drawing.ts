import { axisOver } from '@/app/_figures/axis';
import { dot, path, word, type Drawing, type Shape } from '@/app/_figures/drawing/drawing';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { Measure, WhatIfRow } from '@/lib/assess/what-if';
import { changeSaid, changeWord, digitsFor, measureInSentence, plain, shown, withSign } from './measures';

const WIDTH = 860;
/** Names stand above their dots, so that they have room on a phone too, where words are drawn larger. */
const [LEFT, RIGHT] = [40, 40];
const ROW = 52;
const STRIP = 92;
const HEAD = 34;

/** The measures that a manager weighs against each other. */
const DRAWN: readonly Measure[] = ['needlessRedos', 'missedJobs', 'minutes'];

/** What each scenario changes against as now: a dot on its interval, zero as a line. */
export function changeDrawing(rows: readonly WhatIfRow[]): Drawing {
  const others = rows.filter(({ change }) => change !== null);
  const block = STRIP + others.length * ROW;
  return {
    width: WIDTH,
    height: DRAWN.length * block,
    label: sentence(others),
    shapes: DRAWN.flatMap((measure, i) => stripOf(measure, others, i * block)),
  };
}

function stripOf(measure: Measure, rows: readonly WhatIfRow[], top: number): Shape[] {
  const figures = rows.flatMap(({ name, change }) =>
    change === null ? [] : [{ name, figure: shown(measure, change[measure]) }],
  );
  const axis = axisOver(
    figures.flatMap(({ figure: { low, high } }) => [low, high]),
    0,
    0,
    5,
  );
  const x = (value: number) => LEFT + axis.place(value) * (WIDTH - LEFT - RIGHT);
  const bottom = top + HEAD + figures.length * ROW;
  const step = (axis.ticks[1] ?? 1) - (axis.ticks[0] ?? 0);
  const digits = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  return [
    word(words('whatIf')('change.axis', { measure: measureInSentence(measure) }), 0, top + 22),
    ...axis.ticks.flatMap((tick) => [
      path('grid', `M${x(tick)} ${top + HEAD}V${bottom}`),
      word(withSign(tick, digits), x(tick), bottom + 22, 'middle'),
    ]),
    path('target', `M${x(0)} ${top + HEAD}V${bottom}`),
    ...figures.flatMap(({ name, figure }, i) => {
      const y = top + HEAD + (i + 0.75) * ROW;
      return [
        word(told(name), 0, y - 0.32 * ROW),
        path(
          'line',
          `M${x(figure.low)} ${y}H${x(figure.high)}M${x(figure.low)} ${y - 5}v10M${x(figure.high)} ${y - 5}v10`,
        ),
        dot('dot', x(figure.value), y, 5),
      ];
    }),
  ];
}

function sentence(rows: readonly WhatIfRow[]): string {
  const t = words('whatIf');
  const scenarios = rows.map(({ name, change }) => {
    if (change === null) return told(name);
    const changes = DRAWN.map((measure) => {
      const figure = shown(measure, change[measure]);
      const digits = digitsFor(measure, figure);
      return t('change.one', {
        measure: measureInSentence(measure),
        value: withSign(figure.value, digits),
        low: plain(figure.low, digits),
        high: plain(figure.high, digits),
        word: changeSaid(changeWord(figure)),
      });
    });
    return t('change.of', { name: told(name), changes: changes.join(', ') });
  });
  return t('change.told', { scenarios: scenarios.join('. ') });
}
