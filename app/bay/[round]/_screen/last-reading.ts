import {
  isAgainstOldDatum,
  isHidden,
  placeOf,
  readAt,
  type BayRecord,
  type Entry,
  type Place,
  type PlannedStep,
  type ReadDimension,
  type RecordedSetup,
} from '@/lib/bay';

export interface LastReading {
  place: Place;
  setup: RecordedSetup;
  /** True while a second reading is to come: then nothing of the first is shown. */
  hidden: boolean;
  /** True where a zero gauge was hung again since. */
  stale: boolean;
  read: ReadDimension[];
}

/** What this device read last, by its gauge and place; null before its first reading. */
export function lastReading(
  plan: readonly PlannedStep[],
  record: BayRecord,
  entries: readonly Entry[],
  { device, clearance }: { device: string; clearance: number },
): LastReading | null {
  const last = entries
    .filter((entry) => entry.device === device)
    .findLast(({ body }) => body.kind === 'read' || body.kind === 'correct');
  if (last?.body.kind !== 'read' && last?.body.kind !== 'correct') return null;
  const label = last.body.setup;
  const setup = record.setups.find((one) => one.label === label);
  const place = setup === undefined ? null : placeOf(plan, setup.place);
  if (setup === undefined || place === null) return null;
  return {
    place,
    setup,
    hidden: isHidden(record, place, setup),
    stale: isAgainstOldDatum(plan, record, setup),
    read: readAt(place, setup, clearance),
  };
}
