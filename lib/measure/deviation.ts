import type { Dimension } from './types';

/** Differences below this are the rounding of decimals in a computer, not millimetres. */
export const MM_NOISE = 1e-9;

/** Rounds to the nearest 1e-9 mm, so that a sum of decimals carries no binary rounding. */
export function withoutRoundingNoise(mm: number): number {
  const rounded = Math.round(mm * 1e9) / 1e9;
  return rounded === 0 ? 0 : rounded;
}

/**
 * Deviation from the sheet, mm: value − (nominal + clearance), clearance for heights only.
 * Free of binary rounding, so adding one constant to value and clearance changes nothing.
 * @example deviationOf({ quantity: 'height', nominal: 166, clearance: 100, value: 268 }) // 2
 */
export function deviationOf(
  reading: Pick<Dimension, 'quantity' | 'nominal'> & { clearance: number; value: number },
): number {
  const clearance = reading.quantity === 'height' ? reading.clearance : 0;
  return withoutRoundingNoise(reading.value - (reading.nominal + clearance));
}

/** True where a deviation lies within the tolerance; the edge is within, up to `MM_NOISE`. */
export function isWithin(deviation: number, tolerance: number): boolean {
  return Math.abs(deviation) <= tolerance + MM_NOISE;
}
