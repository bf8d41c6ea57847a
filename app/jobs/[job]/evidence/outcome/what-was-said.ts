import { z } from 'zod';
import { jsonField } from '@/app/_shop/json-field';
import { CAUSES, SIDES, type Side } from '@/lib/measure';

export const NOTE_LENGTH = 200;

/** A setup's label and a side as one value of a form. */
export const whichHeight = (setup: string, side: Side): string => JSON.stringify([setup, side]);

const height = jsonField(200)
  .pipe(z.tuple([z.string().min(1).max(80), z.enum(SIDES)]))
  .transform(([setup, side]) => ({ setup, side }));

/** The form that says what a re-check showed. */
export const whatWasSaid = z.object({
  round: z.string().regex(/^(before|after)-[1-9]\d{0,3}$/),
  height,
  cause: z.enum(CAUSES),
  note: z
    .string()
    .trim()
    .max(NOTE_LENGTH)
    .optional()
    .transform((text) => (text === undefined || text === '' ? null : text)),
});
