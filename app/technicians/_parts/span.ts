import { DateTime } from 'luxon';
import { z } from 'zod';
import { firstOf, type Query } from '@/app/_words/address';

/** What the figures that can be are held to. */
export interface Span {
  /** `2025-03-31`, as asked. */
  from: string | undefined;
  to: string | undefined;
  gauge: string | undefined;
}

const date = z.iso.date();
const tag = z.string().max(80);

/** The time and gauge that the address asks for; what cannot be understood is left out, and a sentence says so. */
export function spanFrom(query: Query): { span: Span; notes: string[] } {
  const notes: string[] = [];
  const read = (name: keyof Span, schema: typeof date | typeof tag): string | undefined => {
    const text = firstOf(query, name);
    if (text === undefined) return undefined;
    const parsed = schema.safeParse(text);
    if (parsed.success) return parsed.data;
    notes.push(`“${text.slice(0, 40)}” is not understood as ${name}, so it was left out.`);
    return undefined;
  };
  return { span: { from: read('from', date), to: read('to', date), gauge: read('gauge', tag) }, notes };
}

/** The same as times in the shop's zone, ms: the first day and the last one included. */
export function timesOf({ from, to }: Span, timeZone: string): { from?: number; to?: number } {
  const start = (day: string, plus: number) =>
    DateTime.fromISO(day, { zone: timeZone }).plus({ days: plus }).toMillis();
  return {
    ...(from !== undefined && { from: start(from, 0) }),
    ...(to !== undefined && { to: start(to, 1) }),
  };
}

/** Whether a quarter, `2025 Q2`, has a day within the span. */
export function holdsQuarter({ from, to }: Span, quarter: string): boolean {
  const [, year = '', number = ''] = /^(\d{4}) Q([1-4])$/.exec(quarter) ?? [];
  const first = DateTime.utc(Number(year), Number(number) * 3 - 2, 1);
  const last = first.plus({ months: 3, days: -1 });
  return (
    (from === undefined || (last.toISODate() ?? '') >= from) &&
    (to === undefined || (first.toISODate() ?? '') <= to)
  );
}
