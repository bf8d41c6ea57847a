import type { MeasuredSums } from '../measured';
import type { SdEstimate } from '../types';

/** Repeats with the gauge untouched, over all quantities. */
export function repeatsOf(measured: MeasuredSums, technician: string): SdEstimate {
  const found = measured.repeatability(technician);
  return found.sd === null ? { ...found, why: 'Nothing was read again with the gauge untouched.' } : found;
}

/** Readings of a height in one hanging, as a rule. */
export function readingsAsARule(measured: MeasuredSums, technician: string): number {
  const { heightReadings = 0, heights = 0 } = measured.hand(technician) ?? {};
  return heights === 0 ? 1 : Math.max(1, Math.round(heightReadings / heights));
}
