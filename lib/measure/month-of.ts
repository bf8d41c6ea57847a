const formats = new Map<string, Intl.DateTimeFormat>();

/**
 * The calendar month of a time in a time zone, as `2025-03`. Swedish dates are written that way; making a format takes
 * longer than using it a thousand times, and every hanging of a long history is asked for its month.
 * @param at epoch milliseconds.
 * @throws RangeError where there is no such time zone.
 */
export function monthOf(at: number, timeZone: string): string {
  const format =
    formats.get(timeZone) ??
    new Intl.DateTimeFormat('sv-SE', { year: 'numeric', month: '2-digit', timeZone });
  formats.set(timeZone, format);
  return format.format(at);
}

/** `2025-03` is of `2025 Q1`. */
export function quarterOf(month: string): string {
  const [year = '', number = ''] = month.split('-');
  return `${year} Q${Math.ceil(Number(number) / 3)}`;
}

/** `2025-03` is of `2025`. */
export const yearOf = (month: string): string => month.slice(0, -'-01'.length);
