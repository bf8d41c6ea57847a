import { describe, expect, it } from 'vitest';
import { dueNow, lastDue, nextDue } from '@/lib/schedule';

const ZONE = 'Europe/Zurich';
const at = (text: string) => Date.parse(text);
const iso = (time: number) => new Date(time).toISOString();

describe('the last time a report was due', () => {
  it('is the full hour of today in the shop’s zone once that has come, and of yesterday before it', () => {
    const rhythm = { every: 'day', hour: 6 } as const;
    expect(iso(lastDue(rhythm, ZONE, at('2026-01-15T05:00:00Z')))).toBe('2026-01-15T05:00:00.000Z');
    expect(iso(lastDue(rhythm, ZONE, at('2026-01-15T04:59:59Z')))).toBe('2026-01-14T05:00:00.000Z');
  });

  it('is on Monday for a week and on the first for a month', () => {
    // 15 January 2026 is a Thursday.
    const now = at('2026-01-15T12:00:00Z');
    expect(iso(lastDue({ every: 'week', hour: 7 }, ZONE, now))).toBe('2026-01-12T06:00:00.000Z');
    expect(iso(lastDue({ every: 'month', hour: 7 }, ZONE, now))).toBe('2026-01-01T06:00:00.000Z');
    expect(iso(lastDue({ every: 'month', hour: 7 }, ZONE, at('2026-03-01T05:00:00Z')))).toBe(
      '2026-02-01T06:00:00.000Z',
    );
  });

  it('keeps its hour on the wall when the clocks change', () => {
    // In Zurich clocks go forward on 29 March 2026 at 2 o'clock and back on 25 October at 3.
    expect(iso(lastDue({ every: 'day', hour: 6 }, ZONE, at('2026-03-29T12:00:00Z')))).toBe(
      '2026-03-29T04:00:00.000Z',
    );
    expect(iso(lastDue({ every: 'day', hour: 2 }, ZONE, at('2026-03-29T12:00:00Z')))).toBe(
      '2026-03-29T01:00:00.000Z',
    );
    expect(iso(lastDue({ every: 'week', hour: 6 }, ZONE, at('2026-03-31T12:00:00Z')))).toBe(
      '2026-03-30T04:00:00.000Z',
    );
  });

  it('is followed by the next time without a gap', () => {
    for (const every of ['day', 'week', 'month'] as const) {
      const rhythm = { every, hour: 23 };
      let due = lastDue(rhythm, ZONE, at('2026-02-10T00:00:00Z'));
      for (let turn = 0; turn < 60; turn++) {
        const next = nextDue(rhythm, ZONE, due);
        expect(next).toBeGreaterThan(due);
        expect(lastDue(rhythm, ZONE, next)).toBe(next);
        expect(lastDue(rhythm, ZONE, next - 1)).toBe(due);
        due = next;
      }
    }
  });
});

describe('what is due now', () => {
  it('is nothing for a time before the schedule was set', () => {
    const schedule = { every: 'day', hour: 6, setAt: at('2026-01-15T10:00:00Z') } as const;
    expect(dueNow(schedule, ZONE, at('2026-01-15T11:00:00Z'))).toBeNull();
    expect(dueNow(schedule, ZONE, at('2026-01-16T05:00:00Z'))).toBe(at('2026-01-16T05:00:00Z'));
  });
});
