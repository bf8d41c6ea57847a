import { roundSaid } from '@/app/_record/trade';
import { callName } from '@/app/_words/verdicts';
import { dot, path, word, type Drawing, type Shape } from '@/app/_figures/drawing/drawing';
import type { StationMark } from '@/app/_figures/station-picture/marks';
import { FIELD, scaleFor, type Scale } from '@/app/_figures/station-picture/scale';
import { shiftLine } from '@/app/_figures/station-picture/shift-line';
import { millimetres, signed, signedMillimetres, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { Call, DatumLine } from '@/lib/assess';
import { SIDES, type Round, type Side } from '@/lib/measure';

/** Points closer than this, in units of the drawing, have their letters on two rows. */
const LETTER_ROOM = 30;
const BAND = FIELD.band + FIELD.above;

/**
 * The stations of a round from the side as a still drawing for paper, front at the left: what the page's picture shows,
 * in shapes that need no colour. Null where no height has a place along the vehicle.
 */
export function stationDrawing(
  round: Round,
  marks: readonly StationMark[],
  datum: readonly DatumLine[],
): { drawing: Drawing; caption: string } | null {
  const counted = marks.filter(({ last }) => last);
  if (counted.length === 0) return null;
  const t = words('record');
  const scale = scaleFor(counted);
  const sides = SIDES.filter((side) => counted.some((mark) => mark.side === side));
  const cut = counted.some(({ deviation }) => Math.abs(deviation) > scale.limit);
  return {
    drawing: {
      width: FIELD.width,
      height: sides.length * BAND,
      label: label(round, counted, sides),
      shapes: sides.flatMap((side, index) =>
        band(
          side,
          counted.filter((mark) => mark.side === side),
          datum.find((line) => line.side === side) ?? null,
          scale,
          index * BAND,
        ),
      ),
    },
    caption:
      t('picture.caption', { round: roundSaid(round), times: scale.exaggeration }) +
      (datum.length === 0 ? '' : t('picture.shift')) +
      (cut ? t('picture.cut', { limit: signedMillimetres(scale.limit, 0) }) : ''),
  };
}

function band(
  side: Side,
  marks: readonly StationMark[],
  line: DatumLine | null,
  scale: Scale,
  top: number,
): Shape[] {
  const datum = top + FIELD.above + FIELD.band / 2 - 12;
  const tolerance = Math.max(...marks.map((mark) => mark.tolerance));
  const half = Math.abs(scale.y(tolerance));
  const [left, right] = [FIELD.left - 8, FIELD.width - FIELD.right];
  const shift = line === null ? '' : shiftLine(line, scale, datum, { from: left, to: right });
  return [
    word(words('record')(`picture.side.${side}`), 0, top + 16),
    path('limit', `M${left} ${datum - half}H${right}M${left} ${datum + half}H${right}`),
    path('axis', `M${left} ${datum}H${right}`),
    word(`±${millimetres(tolerance, 0)}`, left - 6, datum + 5, 'end'),
    ...(shift === '' ? [] : [path('second', shift)]),
    ...lettered(marks, scale).flatMap(({ mark, row }) =>
      bar(mark, scale, datum, top + FIELD.above + FIELD.band - 10 - (1 - row) * 15),
    ),
  ];
}

function bar(mark: StationMark, scale: Scale, datum: number, foot: number): Shape[] {
  const { point, station, deviation, zero, call } = mark;
  const x = Math.round(scale.x(station));
  const tip = datum + scale.y(deviation);
  const above = deviation >= 0;
  const number = zero ? datum + 33 : above ? tip - 12 : tip + 22;
  return [
    path('line', `M${x} ${datum}V${tip}`),
    ...(Math.abs(deviation) > scale.limit ? [path('line', `M${x - 9} ${(datum + tip) / 2 + 3}l18 -6`)] : []),
    ...(zero ? [path('dot', `M${x - 9} ${datum + 17}h18l-9 -16z`)] : [tipOf(call, x, tip)]),
    word(signed(deviation), x, number, 'middle'),
    word(point, x, foot, 'middle'),
  ];
}

/** The tip of a bar: each call has a shape of its own, as on the page. */
function tipOf(call: Call, x: number, y: number): Shape {
  switch (call) {
    case 'nothing-found':
      return dot('dot', x, y, 5.5);
    case 'likely-gauge':
      return path('mark', `M${x - 11} ${y - 2.5}h22v5h-22z`);
    case 'likely-body':
      return path('mark', `M${x - 7} ${y - 7}h14v14h-14z`);
    case 'likely-both':
      return path('mark', `M${x} ${y - 10}l10 10l-10 10l-10 -10z`);
    case 'undecided':
      return path('mark', `M${x - 7} ${y - 7}l14 14m0 -14l-14 14`);
  }
}

/** Points from front to rear, letters that would touch on the second row. */
function lettered(marks: readonly StationMark[], scale: Scale): { mark: StationMark; row: 0 | 1 }[] {
  let before = { x: -Infinity, row: 1 as 0 | 1 };
  return [...marks]
    .sort((a, b) => a.station - b.station)
    .map((mark) => {
      const x = scale.x(mark.station);
      const row = x - before.x < LETTER_ROOM && before.row === 0 ? 1 : 0;
      before = { x, row };
      return { mark, row };
    });
}

function label(round: Round, marks: readonly StationMark[], sides: readonly Side[]): string {
  const t = words('record');
  const told = sides.map((side) =>
    t('picture.labelSide', {
      side: t(`picture.side.${side}`),
      points: marks
        .filter((mark) => mark.side === side)
        .sort((a, b) => a.station - b.station)
        .map(({ point, deviation, zero, call }) =>
          zero
            ? t('compared.zeroName', { name: `${point} ${signed(deviation)}` })
            : `${point} ${signed(deviation)}, ${callName(call)}`,
        )
        .join('; '),
    }),
  );
  return t('picture.label', { round: roundSaid(round), unit: unit(), sides: told.join(' ') });
}
