import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { sentence } from '@/app/_shop/admit';
import { UNITS } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { emptyLength, emptyPoint, LENGTH_COLUMNS, POINT_COLUMNS, type TypedSheet } from '@/lib/measure/sheet';
import { lengthField, pointField } from './field-names';

/** A sheet of some hundred rows. */
const MOST_BYTES = 300_000;
const MOST_ROWS = 500;

const head = z.object({
  do: z.enum(['check', 'save']).catch('check'),
  name: z.string().max(200).catch(''),
  reason: z.string().max(500).catch(''),
  revision: z.coerce.number().int().min(1).catch(1),
  units: z.enum(UNITS).catch('mm'),
  keepDoubts: z
    .literal('yes')
    .transform(() => true)
    .catch(false),
  origin: z.enum(['entered', 'loaded']).catch('entered'),
});

export type SheetForm = z.infer<typeof head> & { typed: TypedSheet };

/** The editor's form as it was sent; a Response that refuses it where it is too large to be one. */
export async function formOf(request: NextRequest): Promise<SheetForm | Response> {
  if (!(Number(request.headers.get('content-length') ?? Infinity) <= MOST_BYTES))
    return sentence(413, words('sheets')('tooLarge'));
  const data = await request.formData();
  const fields = Object.fromEntries(
    [...data].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
  ) as Record<string, string>;
  return { ...head.parse(fields), typed: typedIn(fields) };
}

function typedIn(fields: Readonly<Record<string, string>>): TypedSheet {
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
