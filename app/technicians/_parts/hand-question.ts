import { DateTime } from 'luxon';
import { z } from 'zod';
import {
  askedMonths,
  heldMonths,
  isHeld,
  type AskedMonths,
  type HeldMonths,
} from '@/app/_figures/stretch/asked-months';
import type { Query } from '@/app/_words/address';
import { asked } from '@/app/_words/asked';
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
  const months = askedMonths(query);
  const { read, notes } = asked<keyof typeof schemas>(query, (text, part) =>
    t('span.notUnderstood', { text, part: t(`span.parts.${part}`) }),
  );
  return {
    question: {
      ...months.asked,
      gauge: read('gauge', schemas.gauge),
      sheet: read('sheet', schemas.sheet),
      section: read('section', schemas.section),
    },
    notes: [...months.notes, ...notes],
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
