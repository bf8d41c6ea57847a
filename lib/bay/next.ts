import type { Dimension } from '@/lib/measure/types';
import { EQUIPMENT_CHECKS, type EquipmentCheck, type Step } from './entry';
import type { Place, PlannedStep } from './plan';
import { readingKey, type BayRecord, type RecordedSetup } from './record';

/** What the technician is asked for now. */
export type Prompt =
  | { do: 'check'; step: 'equipment'; check: EquipmentCheck }
  | {
      do: 'hang';
      step: Step;
      place: Place;
      /** Why it is hung though it was before: a zero gauge was hung again since, so the datum is another. */
      again: 'datum-changed' | null;
    }
  | {
      do: 'read';
      step: Step;
      place: Place;
      setup: RecordedSetup;
      dimension: Dimension;
      repeat: number;
      /** True for a second reading of the same: the first value is not shown. */
      blind: boolean;
    }
  /** Everything is read or left out with a reason. */
  | { do: 'finish' };

export interface StepProgress {
  step: Step;
  /** Readings or checks, as planned and as done. */
  wanted: number;
  done: number;
  /** Why the whole step was left out, or null. */
  skipped: string | null;
}

/** The hanging at a place that counts: the last one. */
export function lastSetupAt(record: BayRecord, place: Place): RecordedSetup | null {
  return record.setups.filter((setup) => setup.place === place.key).at(-1) ?? null;
}

const isSkipped = (record: BayRecord, step: Step, place: string | null): boolean =>
  record.skipped.some((one) => one.step === step && (one.place === null || one.place === place));

/** True where a zero gauge was hung again after this setup: it was set against another datum. */
export function isAgainstOldDatum(
  plan: readonly PlannedStep[],
  record: BayRecord,
  setup: RecordedSetup,
): boolean {
  const zeros = plan.find(({ step }) => step === 'zero-gauges')?.places ?? [];
  const own = plan.flatMap(({ places }) => places).find(({ key }) => key === setup.place);
  if (own === undefined || (own.step !== 'heights' && own.step !== 'struts')) return false;
  const order = record.setups.indexOf(setup);
  return zeros.some((place) => {
    const last = lastSetupAt(record, place);
    return last !== null && record.setups.indexOf(last) > order;
  });
}

/** The readings of a place in their order: left, right, then both again. */
function orderOf(place: Place): { dimension: Dimension; repeat: number }[] {
  return Array.from({ length: place.readings }, (_, at) =>
    place.dimensions.map((dimension) => ({ dimension, repeat: at + 1 })),
  ).flat();
}

const missingIn = (place: Place, setup: RecordedSetup | null) =>
  orderOf(place).filter(
    ({ dimension, repeat }) => setup?.readings.has(readingKey(dimension, repeat)) !== true,
  );

/**
 * What to do now: the first thing of the plan that is neither done nor left out.
 * @param from a step that the technician went to by hand: it comes before all others as long as it has something to do.
 */
export function nextOf(plan: readonly PlannedStep[], record: BayRecord, from: Step | null = null): Prompt {
  const chosen = plan.filter(({ step }) => step === from);
  for (const planned of [...chosen, ...plan]) {
    const prompt = nextIn(plan, planned, record);
    if (prompt !== null) return prompt;
  }
  return { do: 'finish' };
}

function nextIn(
  plan: readonly PlannedStep[],
  { step, places }: PlannedStep,
  record: BayRecord,
): Prompt | null {
  if (isSkipped(record, step, null)) return null;
  if (step === 'equipment') {
    const check = EQUIPMENT_CHECKS.find((one) => !record.checks.has(one));
    return check === undefined ? null : { do: 'check', step, check };
  }
  for (const place of places) {
    if (isSkipped(record, step, place.key)) continue;
    const setup = lastSetupAt(record, place);
    if (setup === null) return { do: 'hang', step, place, again: null };
    if (isAgainstOldDatum(plan, record, setup)) return { do: 'hang', step, place, again: 'datum-changed' };
    const [missing] = missingIn(place, setup);
    if (missing !== undefined)
      return { do: 'read', step, place, setup, ...missing, blind: missing.repeat > 1 };
  }
  return null;
}

/** How far each step is. */
export function progressOf(plan: readonly PlannedStep[], record: BayRecord): StepProgress[] {
  return plan.map(({ step, places }) => {
    const skipped = record.skipped.find((one) => one.step === step && one.place === null)?.reason ?? null;
    if (step === 'equipment')
      return { step, wanted: EQUIPMENT_CHECKS.length, done: record.checks.size, skipped };
    const open = places.filter((place) => !isSkipped(record, step, place.key));
    const wanted = open.reduce((sum, place) => sum + orderOf(place).length, 0);
    const missing = open.reduce((sum, place) => {
      const setup = lastSetupAt(record, place);
      const stale = setup !== null && isAgainstOldDatum(plan, record, setup);
      return sum + missingIn(place, stale ? null : setup).length;
    }, 0);
    return { step, wanted, done: wanted - missing, skipped };
  });
}
