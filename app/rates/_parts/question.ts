import { z } from 'zod';
import { address, firstOf, type Query } from '@/app/_words/address';
import { RATE_GROUPINGS, type RateGrouping } from '@/lib/assess/rates';
import { SECTIONS, type Section } from '@/lib/measure';

const name = z.string().max(100);
const month = z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/);

const schemas = {
  from: month,
  to: month,
  technician: name,
  gauge: name,
  sheet: name,
  section: z.enum(SECTIONS),
} as const;

const WANTED: Record<keyof typeof schemas | 'by', string> = {
  by: RATE_GROUPINGS.join(', '),
  from: 'a month such as 2025-03',
  to: 'a month such as 2025-03',
  technician: 'at most 100 characters',
  gauge: 'at most 100 characters',
  sheet: 'at most 100 characters',
  section: SECTIONS.join(', '),
};

/** The jobs that count. */
export interface RateFilter {
  from: string | undefined;
  to: string | undefined;
  technician: string | undefined;
  gauge: string | undefined;
  sheet: string | undefined;
  section: Section | undefined;
}

export interface RateQuestion extends RateFilter {
  by: RateGrouping;
}

/** What the address asks for; a part that cannot be understood is left out, and a sentence says so. */
export function rateQuestion(query: Query): { question: RateQuestion; notes: string[] } {
  const notes: string[] = [];
  const read = <T>(part: keyof typeof WANTED, schema: z.ZodType<T>): T | undefined => {
    const text = firstOf(query, part);
    if (text === undefined) return undefined;
    const parsed = schema.safeParse(text);
    if (parsed.success) return parsed.data;
    notes.push(
      `“${text.slice(0, 40)}” is not understood as ${part} (wanted: ${WANTED[part]}), so it was left out.`,
    );
    return undefined;
  };
  return {
    question: {
      by: read('by', z.enum(RATE_GROUPINGS)) ?? 'technician',
      from: read('from', schemas.from),
      to: read('to', schemas.to),
      technician: read('technician', schemas.technician),
      gauge: read('gauge', schemas.gauge),
      sheet: read('sheet', schemas.sheet),
      section: read('section', schemas.section),
    },
    notes,
  };
}

export const isFiltered = ({ from, to, technician, gauge, sheet, section }: RateFilter): boolean =>
  [from, to, technician, gauge, sheet, section].some((part) => part !== undefined);

/** The same question at another address, or with another part. */
export const rateAddress = (
  path: string,
  question: RateQuestion,
  more: Record<string, string | number | undefined> = {},
): string => address(path, { ...question, ...more });
