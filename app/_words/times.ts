import { speech } from './speech/heard';
import { localeOf, type Speech } from './speech/speech';

/** Times are epoch milliseconds; the shop's time zone decides which day they fall on. */

export function day(time: number, timeZone: string, to: Speech = speech()): string {
  return new Intl.DateTimeFormat(localeOf(to), {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone,
  }).format(time);
}

export function dayAndTime(time: number, timeZone: string, to: Speech = speech()): string {
  return new Intl.DateTimeFormat(localeOf(to), {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    timeZone,
  }).format(time);
}

/** `2025-03` as `Mar 2025`. */
export function monthName(month: string, to: Speech = speech()): string {
  const [year, number] = month.split('-');
  return new Intl.DateTimeFormat(localeOf(to), { month: 'short', year: 'numeric', timeZone: 'UTC' }).format(
    Date.UTC(Number(year), Number(number) - 1, 15),
  );
}
