import { z } from 'zod';
import { firstOf, type Query } from '@/app/_words/address';
import { words } from '@/app/_words/words';

/** Stretches that end with the newest month on record. */
export const LAST_MONTHS = ['3', '6', '12'] as const;

const month = z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/);
const last = z.enum(LAST_MONTHS);

/** The time that an address asks for, as the form shows it. */
export interface AskedMonths {
  /** The newest months; where it is given, `from` and `to` do not count. */
  last: (typeof LAST_MONTHS)[number] | undefined;
  /** `2025-03`, included. */
  from: string | undefined;
  to: string | undefined;
}

export interface HeldMonths {
  from: string | undefined;
  to: string | undefined;
}

/** What the address asks for; a part that cannot be understood is left out, and a sentence says so. */
export function askedMonths(query: Query): { asked: AskedMonths; notes: string[] } {
  const t = words('figures');
  const notes: string[] = [];
  const read = <T>(name: keyof AskedMonths, schema: z.ZodType<T>, wanted: string): T | undefined => {
    const text = firstOf(query, name);
    if (text === undefined) return undefined;
    const parsed = schema.safeParse(text);
    if (parsed.success) return parsed.data;
    notes.push(
      t('stretch.notUnderstood', { text: text.slice(0, 40), part: t(`stretch.parts.${name}`), wanted }),
    );
    return undefined;
  };
  return {
    asked: {
      last: read('last', last, LAST_MONTHS.join(', ')),
      from: read('from', month, t('stretch.wantedMonth')),
      to: read('to', month, t('stretch.wantedMonth')),
    },
    notes,
  };
}

/** The months that are asked for, first and last included. @param months those on record, in their order. */
export function heldMonths({ last: newest, from, to }: AskedMonths, months: readonly string[]): HeldMonths {
  const end = months.at(-1);
  if (newest === undefined || end === undefined) return { from, to };
  return { from: monthsBefore(end, Number(newest) - 1), to: end };
}

export const isHeld = ({ last: newest, from, to }: AskedMonths): boolean =>
  newest !== undefined || from !== undefined || to !== undefined;

/** `2025-02` and 3 as `2024-11`. */
function monthsBefore(of: string, by: number): string {
  const [year = 0, number = 1] = of.split('-').map(Number);
  const count = year * 12 + number - 1 - by;
  return `${Math.floor(count / 12)}-${String((count % 12) + 1).padStart(2, '0')}`;
}
