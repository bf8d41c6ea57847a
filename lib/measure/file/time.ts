import { DateTime, IANAZone } from 'luxon';
import { EARLIEST_YEAR } from './limits';

/** A field read as a time, or the reason why it is none. */
export type TimeField = { at: number; zoned: boolean } | { problem: string };

const ISO =
  /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d\d):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?)?\s*(Z|[+-]\d\d(?::?\d\d)?)?$/i;
/** Longer than any time. */
const LONGEST = 60;
const QUARTER = 15 * 60_000;

/**
 * Reads ISO 8601 times. A time without an offset is one of the shop's time zone; where the clock shows it twice
 * (autumn) the earlier is taken, where the clock skips it (spring) it is refused.
 */
export function timeReader(timeZone: string): (field: string) => TimeField {
  if (!IANAZone.isValidZone(timeZone)) {
    throw new RangeError(`"${timeZone}" is not a time zone. Use an IANA name such as Europe/Berlin.`);
  }
  const offsets = new Map<number, number | null>();
  /** Milliseconds to take off a local clock time; null where the clock skips it. By quarter hours: no zone is finer. */
  const offsetAt = (local: number): number | null => {
    const quarter = Math.floor(local / QUARTER);
    let offset = offsets.get(quarter);
    if (offset === undefined) {
      offset = timeZone === 'UTC' ? 0 : zoneOffset(quarter * QUARTER, timeZone);
      offsets.set(quarter, offset);
    }
    return offset;
  };
  return (field) => {
    const match = field.length > LONGEST ? null : ISO.exec(field);
    if (match === null)
      return { problem: 'is not an ISO 8601 time. Write it such as 2025-01-06T07:31:00+01:00' };
    const [, year = '', month = '', day = '', hour, minute = '', second = '0', fraction = '', zone] = match;
    const local = Date.UTC(+year, +month - 1, +day, +(hour ?? 0), +minute, +second, milliseconds(fraction));
    const date = new Date(local);
    if (date.getUTCMonth() !== +month - 1 || date.getUTCDate() !== +day || +(hour ?? 0) > 23) {
      return { problem: 'is a date or time that does not exist. Correct it' };
    }
    if (+minute > 59 || +second > 59)
      return { problem: 'is a time that does not exist. Correct minutes and seconds' };
    if (hour === undefined)
      return { problem: 'has no time of day. Add it, such as T07:31: the order of readings counts' };
    if (+year < EARLIEST_YEAR) return { problem: `is before ${EARLIEST_YEAR}. Correct the year` };
    if (zone !== undefined) {
      const offset = offsetOf(zone);
      return offset === null
        ? { problem: 'has an offset that does not exist' }
        : { at: local - offset, zoned: true };
    }
    const offset = offsetAt(local);
    return offset === null
      ? {
          problem: `does not exist in ${timeZone}: the clock skips it in spring. Add the offset, such as +01:00`,
        }
      : { at: local - offset, zoned: false };
  };
}

const milliseconds = (fraction: string) => (fraction === '' ? 0 : Math.floor(Number(`0.${fraction}`) * 1000));

function offsetOf(zone: string): number | null {
  if (zone.toUpperCase() === 'Z') return 0;
  const hours = Number(zone.slice(1, 3));
  const minutes = Number(zone.slice(3).replace(':', '') || 0);
  if (hours > 14 || minutes > 59) return null;
  return (zone.startsWith('-') ? -1 : 1) * (hours * 60 + minutes) * 60_000;
}

function zoneOffset(local: number, timeZone: string): number | null {
  const date = new Date(local);
  const time = DateTime.fromObject(
    {
      year: date.getUTCFullYear(),
      month: date.getUTCMonth() + 1,
      day: date.getUTCDate(),
      hour: date.getUTCHours(),
      minute: date.getUTCMinutes(),
    },
    { zone: timeZone },
  );
  const [first = time] = time.getPossibleOffsets().sort((a, b) => a.toMillis() - b.toMillis());
  const skipped = time.hour !== date.getUTCHours() || time.minute !== date.getUTCMinutes();
  return skipped ? null : first.offset * 60_000;
}
