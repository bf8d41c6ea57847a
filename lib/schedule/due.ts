import { DateTime } from 'luxon';
import type { ReportSchedule } from '@/lib/store/reports';

type Rhythm = Pick<ReportSchedule, 'every' | 'hour'>;

/** The hour in the day, week (its Monday) or month (its first day) that a moment lies in, and `plus` of them on. */
function hourOf({ every, hour }: Rhythm, zone: string, moment: number, plus = 0): number {
  const start = DateTime.fromMillis(moment, { zone }).startOf(every);
  // An hour that the clock skips in spring is the next one; one that it shows twice in autumn is the earlier.
  return start
    .plus({ [every]: plus })
    .set({ hour })
    .toMillis();
}

/** The last time up to `now` that the schedule names. */
export function lastDue(rhythm: Rhythm, zone: string, now: number): number {
  const due = hourOf(rhythm, zone, now);
  return due <= now ? due : hourOf(rhythm, zone, now, -1);
}

/** The next time after `now` that the schedule names. */
export function nextDue(rhythm: Rhythm, zone: string, now: number): number {
  const due = hourOf(rhythm, zone, now);
  return due > now ? due : hourOf(rhythm, zone, now, 1);
}

/**
 * The time for which a report is due; null where that lies before the schedule was set. However many times were
 * missed, it is the last of them.
 */
export function dueNow(schedule: ReportSchedule, zone: string, now: number): number | null {
  const due = lastDue(schedule, zone, now);
  return due > schedule.setAt ? due : null;
}
