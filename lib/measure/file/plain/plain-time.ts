import { EARLIEST_YEAR } from '../limits';

const DASH = 45;
const COLON = 58;
const DAY = 86_400_000;

/** Reads times that are written out in full with their offset, `2025-01-06T07:31:00.000+01:00`, without making texts of their parts. */
export class PlainTimes {
  private lastDay = -1;
  private lastAt = 0;

  /** Epoch ms; NaN for a time that is written otherwise, has no offset, or does not exist. */
  read(bytes: Uint8Array, from: number, to: number): number {
    if (to - from < 20 || bytes[from + 4] !== DASH || bytes[from + 7] !== DASH) return Number.NaN;
    if (bytes[from + 10] !== 84 || bytes[from + 13] !== COLON) return Number.NaN;
    if (bytes[from + 16] !== COLON) return Number.NaN;
    const year = two(bytes, from) * 100 + two(bytes, from + 2);
    const day = this.day(year, two(bytes, from + 5), two(bytes, from + 8));
    const hour = two(bytes, from + 11);
    const minute = two(bytes, from + 14);
    const second = two(bytes, from + 17);
    if (!(hour <= 23 && minute <= 59 && second <= 59)) return Number.NaN;
    let at = from + 19;
    let ms = 0;
    if (bytes[at] === 46) {
      ms = two(bytes, at + 1) * 10 + digit(bytes, at + 3);
      at += 4;
    }
    return day + ((hour * 60 + minute) * 60 + second) * 1000 + ms - offset(bytes, at, to);
  }

  private day(year: number, month: number, day: number): number {
    const key = (year * 100 + month) * 100 + day;
    if (key === this.lastDay) return this.lastAt;
    const at = Date.UTC(year, month - 1, day);
    const date = new Date(at);
    const exists = date.getUTCMonth() === month - 1 && date.getUTCDate() === day && at % DAY === 0;
    if (!exists || year < EARLIEST_YEAR) return Number.NaN;
    this.lastDay = key;
    this.lastAt = at;
    return at;
  }
}

function offset(bytes: Uint8Array, at: number, to: number): number {
  const sign = bytes[at];
  if (sign === 90 && to - at === 1) return 0;
  if ((sign !== 43 && sign !== DASH) || to - at !== 6 || bytes[at + 3] !== COLON) return Number.NaN;
  const hours = two(bytes, at + 1);
  const minutes = two(bytes, at + 4);
  if (!(hours <= 14 && minutes <= 59)) return Number.NaN;
  return (sign === DASH ? -1 : 1) * (hours * 60 + minutes) * 60_000;
}

function digit(bytes: Uint8Array, at: number): number {
  const code = (bytes[at] ?? 0) - 48;
  return code >= 0 && code <= 9 ? code : Number.NaN;
}

const two = (bytes: Uint8Array, at: number) => digit(bytes, at) * 10 + digit(bytes, at + 1);
