import { z } from 'zod';
import { address, type Query } from '@/app/_words/address';
import { asked } from '@/app/_words/asked';
import { words } from '@/app/_words/words';
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

type Part = keyof typeof schemas | 'by';

/** What a part of the address may be, as a reader is told where it cannot be understood. */
function wantedOf(part: Part): string {
  const t = words('rates');
  switch (part) {
    case 'by':
      return RATE_GROUPINGS.join(', ');
    case 'section':
      return SECTIONS.join(', ');
    case 'from':
    case 'to':
      return t('month');
    default:
      return t('atMost');
  }
}

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
  const t = words('rates');
  const { read, notes } = asked<Part>(query, (text, part) =>
    t('notUnderstood', { text, part: t(`parts.${part}`), wanted: wantedOf(part) }),
  );
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
