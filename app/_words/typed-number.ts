import { z } from 'zod';
import { inchesToMillimetres } from '@/lib/measure/units';
import { speech } from './speech';

/** A number as people type it, with a point or a comma and with either sign for minus; null where it is none. */
export function numberFrom(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('\u2212', '-');
  return /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/** The field of a form that holds one. */
export const typedNumber = z.string().transform((text, context) => {
  const number = numberFrom(text);
  if (number !== null) return number;
  context.addIssue({ code: 'custom', message: 'no number' });
  return z.NEVER;
});

/** The field of a form that holds a length, typed in the reader's unit; comes out in millimetres. */
export const typedLength = typedNumber.transform(typedMillimetres);

/** A length typed in the reader's unit, in millimetres; to the nanometre, so that no noise of the conversion stays. */
export function typedMillimetres(typed: number): number {
  return speech().units === 'in' ? Math.round(inchesToMillimetres(typed) * 1e6) / 1e6 : typed;
}
