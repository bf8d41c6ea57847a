import { describe, expect, test } from 'vitest';
import { count, percent, percentTaken, signed, signedMillimetres } from '@/app/_words/numbers';

describe('numbers in words', () => {
  test('a deviation always carries its sign, zero none', () => {
    expect(signed(6.24)).toBe('+6.2');
    expect(signed(-0.4)).toBe('−0.4');
    expect(signed(-0.04)).toBe('0.0');
    expect(signed(0.04)).toBe('0.0');
    expect(signedMillimetres(-3)).toBe('−3.0\u00a0mm');
  });

  test('a share is not rounded to certainty', () => {
    expect(percent(0.996)).toBe('>\u00a099\u00a0%');
    expect(percent(0.004)).toBe('<\u00a01\u00a0%');
    expect(percent(1)).toBe('100\u00a0%');
    expect(percent(0)).toBe('0\u00a0%');
    expect(percent(0.784)).toBe('78\u00a0%');
  });

  test('what is taken of a whole is rounded like any number, since it may be more than all of it', () => {
    expect(percentTaken(0.9987)).toBe('100\u00a0%');
    expect(percentTaken(1.138)).toBe('114\u00a0%');
  });

  test('a count agrees with its noun', () => {
    expect(count(1, 'job')).toBe('1\u00a0job');
    expect(count(10_000, 'job')).toBe('10,000\u00a0jobs');
  });
});
