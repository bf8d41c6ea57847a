import { speech } from './speech/heard';
import { localeOf, type Speech } from './speech/speech';

/** Times are epoch milliseconds; the shop's time zone decides which day they fall on. */

const PARTS = {
  day: { day: 'numeric', month: 'short', year: 'numeric' },
  dayAndTime: { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' },
  month: { month: 'short', year: 'numeric' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>;

const formats = new Map<string, Intl.DateTimeFormat>();

/** Making a format takes longer than a row of a table; there are as many as languages and time zones of shops. */
function formatOf(parts: keyof typeof PARTS, timeZone: string, to: Speech): Intl.DateTimeFormat {
  const key = `${to.language} ${parts} ${timeZone}`;
  const known = formats.get(key);
  if (known !== undefined) return known;
  const format = new Intl.DateTimeFormat(localeOf(to), { ...PARTS[parts], timeZone });
  formats.set(key, format);
  return format;
}

export const day = (time: number, timeZone: string, to: Speech = speech()): string =>
  formatOf('day', timeZone, to).format(time);

export const dayAndTime = (time: number, timeZone: string, to: Speech = speech()): string =>
  formatOf('dayAndTime', timeZone, to).format(time);

/** `2025-03` as `Mar 2025`. */
export function monthName(month: string, to: Speech = speech()): string {
  const [year, number] = month.split('-');
  return formatOf('month', 'UTC', to).format(Date.UTC(Number(year), Number(number) - 1, 15));
}
