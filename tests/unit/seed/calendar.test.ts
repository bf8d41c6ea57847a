import { describe, expect, it } from 'vitest';
import { DayBook, dayOfJob, workingDays } from '@/seed/calendar';

describe('workingDays', () => {
  it('opens at half past seven local time, summer and winter, and not at the weekend', () => {
    const days = workingDays('2026-03-27', '2026-03-30', 'Europe/Vienna');
    expect(days.map((day) => new Date(day).toISOString())).toEqual([
      '2026-03-27T06:30:00.000Z',
      '2026-03-30T05:30:00.000Z',
    ]);
  });

  it('is closed around New Year', () => {
    const days = workingDays('2025-12-23', '2026-01-07', 'Europe/Vienna');
    expect(days.map((day) => new Date(day).toISOString().slice(0, 10))).toEqual(['2025-12-23', '2026-01-07']);
  });
});

describe('DayBook', () => {
  it('gives each round a slot of its own and goes on to the next day when one is full', () => {
    const book = new DayBook([0, 86_400_000]);
    const booked = Array.from({ length: 12 }, () => book.book(0));
    expect(new Set(booked.map((slot) => slot?.at)).size).toBe(12);
    expect(booked.map((slot) => slot?.day)).toEqual([0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1]);
    expect(book.book(0)).toBeNull();
  });
});

describe('dayOfJob', () => {
  it('spreads jobs over the days in order, and leaves the last two without a newcomer', () => {
    const days = Array.from({ length: 100 }, (_, index) => dayOfJob(index, 100, 52, 0.999));
    expect(days).toEqual(days.toSorted((a, b) => a - b));
    expect(days[0]).toBe(0);
    expect(days.at(-1)).toBe(49);
    expect(new Set(days).size).toBe(50);
  });
});
