import { isPoint, lengthEnds, type LengthEnd } from '@/lib/measure/dimension';
import { expandRows } from '../expand';
import { fitOf, type ExpectedLength } from '../fit';
import { atLength, remark, type Remark } from '../remark';
import { lengthName, type LengthRow, type PointRow, type SheetRows } from '../rows';
import { sidesOf } from '../sides';
import { mayBeDiagonal, sharedLetters } from '@/lib/measure/shared-letters';

/** Each length by itself: its ends, its value, and whether that fits where its ends are. */
export function checkLengths(rows: SheetRows): Remark[] {
  return [...rows.lengths.flatMap((length, index) => checkLength(rows, length, index)), ...sameNames(rows)];
}

function checkLength({ points }: SheetRows, length: LengthRow, index: number): Remark[] {
  const name = lengthName(length);
  const fault = (code: Remark['code'], column: Parameters<typeof atLength>[1], values = {}) =>
    remark('fault', code, atLength(index, column), { name, ...values });
  const found: Remark[] = [];
  for (const column of ['from', 'to'] as const) {
    const end = length[column];
    if (end === '') found.push(fault('end-missing', column, { row: { count: index + 1 } }));
    else if (endOf(end) === null) found.push(fault('letter-wrong', column, { letter: end }));
    else found.push(...unknownEnd(points, endOf(end), (code, values) => fault(code, column, values)));
  }
  if (found.length === 0 && length.from === length.to) found.push(fault('ends-same', 'to'));
  if (!Number.isFinite(length.nominal)) found.push(fault('nominal-missing', 'nominal'));
  if (length.tolerance <= 0) found.push(fault('tolerance-zero', 'tolerance', { letter: name }));
  return found.length > 0 ? found : unfit(points, length, index);
}

/** `K` or `K.L`. */
const endOf = (text: string): LengthEnd | null => {
  const ends = lengthEnds(`${text}-X`);
  return ends !== null && isPoint(ends[0].point) ? ends[0] : null;
};

function unknownEnd(
  points: readonly PointRow[],
  end: LengthEnd | null,
  fault: (code: Remark['code'], values: Remark['values']) => Remark,
): Remark[] {
  if (end === null) return [];
  const of = points.filter(({ letter }) => letter === end.point);
  if (of.length === 0) return [fault('end-unknown', { end: end.point })];
  if (end.side === null || of.some(({ side }) => sidesOf(side).includes(end.side))) return [];
  return [fault('end-side', { end: end.point, side: end.side })];
}

/** One length twice, or more values of one name than it can stand for. */
function sameNames(rows: SheetRows): Remark[] {
  const shared = sharedLetters(expandRows({ points: rows.points, lengths: [] }).dimensions);
  const seen: { name: string; nominal: number; index: number }[] = [];
  return rows.lengths.flatMap((length, index) => {
    const name = lengthName(length);
    const before = seen.filter((one) => one.name === name || one.name === lengthName(turned(length)));
    seen.push({ name, nominal: length.nominal, index });
    const [first] = before;
    if (length.from === '' || length.to === '' || first === undefined) return [];
    const row = { first: { count: first.index + 1 }, row: { count: index + 1 } };
    if (before.some(({ nominal }) => nominal === length.nominal))
      return [remark('fault', 'length-twice', atLength(index, 'nominal'), { name, ...row })];
    if (before.length < (mayBeDiagonal(name, shared) ? 2 : 1)) return [];
    return [remark('fault', 'length-third', atLength(index, 'nominal'), { name, ...row })];
  });
}

const turned = ({ from, to }: LengthRow) => ({ from: to, to: from });

function unfit(points: readonly PointRow[], length: LengthRow, index: number): Remark[] {
  const name = lengthName(length);
  const { fits, expected, otherKind, asInches } = fitOf(length, points);
  const doubt = (code: Remark['code'], column: 'nominal' | 'kind', values: Remark['values']) => [
    remark('doubt', code, atLength(index, column), { name, value: { mm: length.nominal }, ...values }),
  ];
  if (fits !== null) return [];
  if (expected.length === 0 && length.kind !== null)
    return [remark('fault', 'kind-contradicts', atLength(index, 'kind'), { name, kind: length.kind })];
  const told = valuesOf(closest(expected, length.nominal));
  if (otherKind !== null)
    return doubt('length-other-kind', 'kind', { ...told, kind: length.kind ?? '', other: otherKind });
  if (asInches) return doubt('length-inches', 'nominal', told);
  return told.distance === undefined
    ? doubt('length-short', 'nominal', { least: { mm: Math.min(...expected.map(({ least }) => least)) } })
    : doubt('length-unfit', 'nominal', told);
}

function closest(expected: readonly ExpectedLength[], nominal: number): ExpectedLength | undefined {
  const off = ({ pointToPoint, least }: ExpectedLength) => Math.abs((pointToPoint ?? least) - nominal);
  return [...expected].sort((a, b) => off(a) - off(b))[0];
}

/** What the coordinates come to, in both ways of measuring; the projection alone where a height is not said. */
function valuesOf(one: ExpectedLength | undefined): Record<string, { mm: number }> {
  if (one === undefined || one.parallel === null) return {};
  return { distance: { mm: one.pointToPoint ?? one.parallel }, parallel: { mm: one.parallel } };
}
