import { expect } from 'vitest';

/** Fails unless `actual` is within the relative tolerance of `expected` (both zero counts as equal). */
export function expectRelative(
  actual: number | null | undefined,
  expected: number,
  tolerance: number,
  label = '',
): void {
  const error = actual === expected ? 0 : Math.abs((actual ?? NaN) - expected) / Math.abs(expected);
  expect(error, `${label} expected ${expected}, got ${String(actual)}`).toBeLessThanOrEqual(tolerance);
}

/** Fails unless `actual` is within the absolute tolerance of `expected`. */
export function expectAbsolute(
  actual: number | null | undefined,
  expected: number,
  tolerance: number,
  label = '',
): void {
  const error = Math.abs((actual ?? NaN) - expected);
  expect(error, `${label} expected ${expected}, got ${String(actual)}`).toBeLessThanOrEqual(tolerance);
}
