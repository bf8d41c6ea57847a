import { DateTime } from 'luxon';
import { z } from 'zod';
import {
  askedMonths,
  heldMonths,
  isHeld,
  type AskedMonths,
  type HeldMonths,
} from '@/app/_figures/stretch/asked-months';
import { firstOf, type Query } from '@/app/_words/address';
import { words } from '@/app/_words/words';
import type { SpanChoices } from '@/lib/assess/answers';
import { SECTIONS, type Section } from '@/lib/measure';

/** What the figures of a hand are held to. */
export interface HandQuestion extends AskedMonths {
  gauge: string | undefined;
  sheet: string | undefined;
  section: Section | undefined;
}

const schemas = { gauge: z.string().max(80), sheet: z.string().max(100), section: z.enum(SECTIONS) };

/** What the address asks for; what cannot be understood is left out, and a sentence says so. */
export function handQuestion(query: Query): { question: HandQuestion; notes: string[] } {
  const t = words('hand');
  const { asked, notes } = askedMonths(query);
  const read = <T>(name: keyof typeof schemas, schema: z.ZodType<T>): T | undefined => {
    const text = firstOf(query, name);
    if (text === undefined) return undefined;
    const parsed = schema.safeParse(text);
    if (parsed.success) return parsed.data;
    notes.push(t('span.notUnderstood', { text: text.slice(0, 40), part: t(`span.parts.${name}`) }));
    return undefined;
  };
  return {
    question: {
      ...asked,
      gauge: read('gauge', schemas.gauge),
      sheet: read('sheet', schemas.sheet),
      section: read('section', schemas.section),
    },
    notes,
  };
}

export const isAsked = (question: HandQuestion): boolean =>
  isHeld(question) ||
  question.gauge !== undefined ||
  question.sheet !== undefined ||
  question.section !== undefined;

/** The same with the months told one by one. */
export const heldTo = (
  question: HandQuestion,
  { months }: SpanChoices,
): HeldMonths & Pick<HandQuestion, 'gauge' | 'sheet' | 'section'> => ({
  ...heldMonths(question, months),
  gauge: question.gauge,
  sheet: question.sheet,
  section: question.section,
});

/** Months as times in the shop's zone, ms: the first one included, the day after the last one not. */
export function timesOf({ from, to }: HeldMonths, timeZone: string): { from?: number; to?: number } {
  const start = (month: string) => DateTime.fromISO(`${month}-01`, { zone: timeZone });
  return {
    ...(from !== undefined && { from: start(from).toMillis() }),
    ...(to !== undefined && { to: start(to).plus({ months: 1 }).toMillis() }),
  };
}
