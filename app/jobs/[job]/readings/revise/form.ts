import { z } from 'zod';
import { jsonField } from '@/app/_shop/json-field';
import { QUANTITIES, SIDES } from '@/lib/measure';
import type { ReadingRevision } from '@/lib/access';
import { typedMillimetres } from '@/app/_words/typed-number';

export const REASON_LENGTH = 200;

const place = z.tuple([
  z.string().min(1).max(80),
  z.enum(QUANTITIES),
  z.string().min(1).max(80),
  z.enum(SIDES).nullable(),
  z.number(),
  z.number().int().min(1),
]);

/** A reading as one value of a form. */
export const whichReading = ({
  setup,
  quantity,
  point,
  side,
  nominal,
  repeat,
}: Pick<ReadingRevision, 'setup' | 'quantity' | 'point' | 'side' | 'nominal' | 'repeat'>): string =>
  JSON.stringify([setup, quantity, point, side, nominal, repeat]);

const reading = jsonField(400)
  .pipe(place)
  .transform(([setup, quantity, point, side, nominal, repeat]) => ({
    setup,
    quantity,
    point,
    side,
    nominal,
    repeat,
  }));

/** In the reader's unit, with a point or a comma before the decimals; comes out in millimetres. */
const length = z
  .string()
  .trim()
  .transform((text) => text.replace(',', '.'))
  .refine((text) => /^-?\d{1,6}(\.\d{1,4})?$/.test(text))
  .transform((text) => typedMillimetres(Number(text)));

const reason = z.string().trim().min(1).max(REASON_LENGTH);

/** The form that corrects, excludes or includes a reading. */
export const revision = z.discriminatedUnion('what', [
  z.object({ what: z.literal('correct'), reading, reason, value: length }),
  z.object({ what: z.literal('exclude'), reading, reason }),
  z.object({ what: z.literal('include'), reading, reason }),
]);
