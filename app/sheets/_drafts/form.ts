import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { sentence } from '@/app/_shop/admit';
import { UNITS } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import type { TypedSheet } from '@/lib/measure/sheet';
import { textsOf, typedIn } from './typed-in';

/** A sheet of some hundred rows. */
const MOST_BYTES = 300_000;

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
  const fields = textsOf(await request.formData());
  return { ...head.parse(fields), typed: typedIn(fields) };
}
