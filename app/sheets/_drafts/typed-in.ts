import { emptyLength, emptyPoint, LENGTH_COLUMNS, POINT_COLUMNS, type TypedSheet } from '@/lib/measure/sheet';
import { lengthField, pointField } from './field-names';

const MOST_ROWS = 500;

/** The rows that the fields of the editor's form hold, by their names; a tick that is not set has no field. */
export function typedIn(fields: Readonly<Record<string, string>>): TypedSheet {
  const rows = { point: 0, length: 0 };
  for (const name of Object.keys(fields)) {
    const found = /^(point|length) (\d{1,3}) /.exec(name);
    const block = found?.[1];
    if (block === 'point' || block === 'length') rows[block] = Math.max(rows[block], Number(found?.[2]) + 1);
  }
  const upTo = (count: number) => Array.from({ length: Math.min(count, MOST_ROWS) }, (_, row) => row);
  return {
    points: upTo(rows.point).map((row) => {
      const point = emptyPoint();
      for (const column of POINT_COLUMNS) point[column] = fields[pointField(row, column)] ?? '';
      return point;
    }),
    lengths: upTo(rows.length).map((row) => {
      const length = emptyLength();
      for (const column of LENGTH_COLUMNS) length[column] = fields[lengthField(row, column)] ?? '';
      return length;
    }),
  };
}

/** The texts of a form by the names of their fields. */
export const textsOf = (data: FormData): Record<string, string> =>
  Object.fromEntries(
    [...data].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
  );
