import { z } from 'zod';
import type { Query } from '@/app/_words/address';
import { asked } from '@/app/_words/asked';
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
  const wantedOf = (part: keyof AskedMonths) =>
    part === 'last' ? LAST_MONTHS.join(', ') : t('stretch.wantedMonth');
  const { read, notes } = asked<keyof AskedMonths>(query, (text, part) =>
    t('stretch.notUnderstood', { text, part: t(`stretch.parts.${part}`), wanted: wantedOf(part) }),
  );
  return {
    asked: {
      last: read('last', last),
      from: read('from', month),
      to: read('to', month),
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
