import { describe, expect, it } from 'vitest';
import { timeReader } from '@/lib/measure/file/time';

const iso = (field: string, zone = 'UTC') => {
  const time = timeReader(zone)(field);
  return 'problem' in time ? time.problem : new Date(time.at).toISOString();
};

describe('times are ISO 8601', () => {
  it.each([
    ['2025-01-06T07:31:00Z', '2025-01-06T07:31:00.000Z'],
    ['2025-01-06T07:31:00+00:00', '2025-01-06T07:31:00.000Z'],
    ['2025-01-06T07:31:00.250+0100', '2025-01-06T06:31:00.250Z'],
    ['2025-01-06T07:31:00,5-05:30', '2025-01-06T13:01:00.500Z'],
    ['2025-01-06T07:31+02', '2025-01-06T05:31:00.000Z'],
    ['2025-01-06 07:31', '2025-01-06T07:31:00.000Z'],
    ['2024-02-29T00:00Z', '2024-02-29T00:00:00.000Z'],
  ])('%s is %s', (field, time) => expect(iso(field)).toBe(time));

  it.each([
    ['2025-02-29T10:00Z', 'does not exist'],
    ['2025-04-31T10:00Z', 'does not exist'],
    ['2025-13-01T10:00Z', 'does not exist'],
    ['2025-01-06T25:00Z', 'does not exist'],
    ['2025-01-06T10:61Z', 'does not exist'],
    ['2025-01-06T10:00+15:00', 'offset'],
    ['0025-01-06T10:00Z', 'before 1970'],
    ['2025-01-06', 'no time of day'],
    ['6/1/2025 7:31', 'not an ISO 8601 time'],
    ['1736148660', 'not an ISO 8601 time'],
  ])('%s is none: it %s', (field, words) => expect(iso(field)).toContain(words));
});

// Changes of the clock: IANA time zone database, Europe/Berlin and Australia/Lord_Howe in 2025.
describe('times without an offset are those of the shop', () => {
  it('in winter and in summer', () => {
    expect(iso('2025-01-06T07:31', 'Europe/Berlin')).toBe('2025-01-06T06:31:00.000Z');
    expect(iso('2025-07-06T07:31', 'Europe/Berlin')).toBe('2025-07-06T05:31:00.000Z');
  });

  it('an hour that the clock skips is refused', () => {
    expect(iso('2025-03-30T01:59', 'Europe/Berlin')).toBe('2025-03-30T00:59:00.000Z');
    expect(iso('2025-03-30T02:30', 'Europe/Berlin')).toContain('the clock skips it');
    expect(iso('2025-03-30T03:00', 'Europe/Berlin')).toBe('2025-03-30T01:00:00.000Z');
    expect(iso('2025-10-05T02:10', 'Australia/Lord_Howe')).toContain('the clock skips it');
    expect(iso('2025-10-05T02:40', 'Australia/Lord_Howe')).toBe('2025-10-04T15:40:00.000Z');
  });

  it('of an hour that the clock shows twice the first is taken', () => {
    expect(iso('2025-10-26T02:30', 'Europe/Berlin')).toBe('2025-10-26T00:30:00.000Z');
    expect(iso('2025-10-26T03:00', 'Europe/Berlin')).toBe('2025-10-26T02:00:00.000Z');
  });

  it('a zone that does not exist is a wrong call', () => {
    expect(() => timeReader('Mars/Olympus')).toThrow(/not a time zone/);
  });
});
