import type { BayRecord, RecordedSetup } from './record';
import type { Place, PlannedStep } from './plan';

/**
 * True while a gauge that is read more than once still has a reading to come: until then nobody is shown what it read,
 * so that the second reading is not drawn to the first. A place that was left out has no reading to come.
 */
export function isHidden(record: BayRecord, place: Place, setup: RecordedSetup): boolean {
  if (place.readings < 2) return false;
  const out = record.skipped.some(
    (one) => one.step === place.step && (one.place === null || one.place === place.key),
  );
  const last = record.setups.filter((one) => one.place === place.key).at(-1);
  if (out || record.finished || last !== setup) return false;
  return setup.readings.size > 0 && setup.readings.size < place.readings * place.dimensions.length;
}

/** The record without the readings that are not shown yet. */
export function shownOf(plan: readonly PlannedStep[], record: BayRecord): BayRecord {
  const places = new Map(plan.flatMap(({ places: all }) => all.map((place) => [place.key, place])));
  const setups = record.setups.filter((setup) => {
    const place = places.get(setup.place);
    return place === undefined || !isHidden(record, place, setup);
  });
  return { ...record, setups };
}
