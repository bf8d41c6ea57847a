import { describe, expect, test } from 'vitest';
import { address, firstOf, jobAddress, setupAnchor } from '@/app/_words/address';
import { themeFrom } from '@/app/_look/theme';

describe('addresses', () => {
  test('leave out what is not asked', () => {
    expect(address('/jobs', { search: 'A b', page: undefined })).toBe('/jobs?search=A+b');
    expect(address('/jobs', {})).toBe('/jobs');
  });

  test('carry any label', () => {
    expect(jobAddress('A/7 ?')).toBe('/jobs/A%2F7%20%3F');
    expect(setupAnchor('before-1 B1/03')).toMatch(/^[\w.~!*'()-]+$/);
    expect(setupAnchor('a b')).not.toBe(setupAnchor('a-b'));
  });

  test('the first of several values counts', () => {
    expect(firstOf({ page: ['2', '3'] }, 'page')).toBe('2');
    expect(firstOf({ page: '  ' }, 'page')).toBeUndefined();
  });
});

test('an unknown theme follows the device', () => {
  expect(themeFrom('dark')).toBe('dark');
  expect(themeFrom('"><script>')).toBe('system');
  expect(themeFrom(undefined)).toBe('system');
});
