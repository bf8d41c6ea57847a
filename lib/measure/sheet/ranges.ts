import { STATION_RANGE, TOLERANCE_RANGE, VALUE_RANGE, type Range } from '@/lib/measure/file/limits';

/** What a value of a sheet can be, mm; what lies outside is nonsense. A tolerance of zero is named by itself. */
export const RANGES = {
  station: STATION_RANGE,
  height: VALUE_RANGE.height,
  halfWidth: { low: 0, high: 5_000 },
  centerline: VALUE_RANGE.centerline,
  nominal: VALUE_RANGE.length,
  tolerance: TOLERANCE_RANGE,
} as const satisfies Record<string, Range>;
