import type { Step } from './entry';
import { nextOf, type Prompt } from './next';
import type { Place, PlannedStep } from './plan';
import type { BayRecord } from './record';

/** Where the technician went by hand: it comes before all else as long as it has something to do. */
export interface Aim {
  step: Step;
  /** A place of the step, or null for the step. */
  place: string | null;
  /** Its gauge is to be hung again, whatever was read already. */
  again: boolean;
}

export function placeOf(plan: readonly PlannedStep[], key: string): Place | null {
  return plan.flatMap(({ places }) => places).find((place) => place.key === key) ?? null;
}

/** What to do now, with where the technician went by hand. */
export function aimedNext(plan: readonly PlannedStep[], record: BayRecord, aim: Aim | null): Prompt {
  if (aim === null) return nextOf(plan, record);
  const place = aim.place === null ? null : placeOf(plan, aim.place);
  if (place === null) return nextOf(plan, record, aim.step);
  if (aim.again) return { do: 'hang', step: aim.step, place, again: null };
  const first = plan.map((planned) =>
    planned.step === aim.step
      ? { ...planned, places: [place, ...planned.places.filter(({ key }) => key !== place.key)] }
      : planned,
  );
  return nextOf(first, record, aim.step);
}
