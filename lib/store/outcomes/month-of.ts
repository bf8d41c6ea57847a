import { DateTime } from 'luxon';

/** The calendar month of a time in a time zone, as `2025-03`. */
export function monthOf(at: number, timeZone: string): string {
  return DateTime.fromMillis(at, { zone: timeZone }).toFormat('yyyy-MM');
}
