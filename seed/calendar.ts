import { DateTime } from 'luxon';

const FIRST_HOUR = { hour: 7, minute: 30 };
/** Minutes after the doors open at which a round may begin; one round at a time, with a break at noon. */
const SLOTS = [0, 85, 170, 300, 385, 470];

/** Start of a day (`2026-06-09`) in the shop's time zone, as epoch milliseconds. */
export function dayStart(date: string, timeZone: string): number {
  return DateTime.fromISO(date, { zone: timeZone }).toMillis();
}

/** When the doors open on each working day from first to last, both included. Closed around New Year. */
export function workingDays(first: string, last: string, timeZone: string): number[] {
  const end = DateTime.fromISO(last, { zone: timeZone }).endOf('day');
  const days: number[] = [];
  for (let day = DateTime.fromISO(first, { zone: timeZone }); day <= end; day = day.plus({ days: 1 })) {
    const closed =
      day.weekday > 5 || (day.month === 12 && day.day >= 24) || (day.month === 1 && day.day <= 6);
    if (!closed) days.push(day.set(FIRST_HOUR).toMillis());
  }
  return days;
}

/** No vehicle comes in on the last days, so that each finds a slot for its first round. */
const LAST_DAYS = 2;

/** The day, counted from 0, on which a job comes in: jobs are spread evenly, in order, `u` in [0, 1) by chance. */
export function dayOfJob(index: number, jobs: number, days: number, u: number): number {
  return Math.floor(((index + u) / jobs) * Math.max(1, days - LAST_DAYS));
}

/** Which rounds are measured when: each takes the next free slot, so nobody and no gauge is in two places. */
export class DayBook {
  readonly #days: readonly number[];
  readonly #taken = new Map<number, number>();

  constructor(days: readonly number[]) {
    this.#days = days;
  }

  /** Forgets the days before this one, so that ten years take no more memory than a week. */
  forgetBefore(day: number): void {
    for (const known of this.#taken.keys()) if (known < day) this.#taken.delete(known);
  }

  /** The first free slot on this day or a later one; null where the days are over. */
  book(day: number): { day: number; at: number } | null {
    for (let d = day; ; d++) {
      const opens = this.#days[d];
      if (opens === undefined) return null;
      const slot = SLOTS[this.#taken.get(d) ?? 0];
      if (slot === undefined) continue;
      this.#taken.set(d, (this.#taken.get(d) ?? 0) + 1);
      return { day: d, at: opens + slot * 60_000 };
    }
  }
}
