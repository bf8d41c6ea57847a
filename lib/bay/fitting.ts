import { lengthEnds } from '@/lib/measure/dimension';
import type { GaugeKind } from '@/lib/measure/types';
import type { Step } from './entry';
import { lastSetupAt } from './next';
import type { Place, PlannedStep } from './plan';
import type { BayRecord } from './record';

const FOR_LENGTHS: readonly GaugeKind[] = ['tram', 'digital-tram', 'tracking', 'tape'];

/** Which gauges can read what a step asks for. Source: common practice. */
export const FITTING: Record<Step, readonly GaugeKind[]> = {
  equipment: [],
  'center-lengths': FOR_LENGTHS,
  'zero-gauges': ['centering'],
  heights: ['centering'],
  struts: ['strut'],
  centerline: ['centering'],
  lengths: FOR_LENGTHS,
};

/** Where each gauge hangs: the place of its last setup, unless another gauge hangs there by now. */
export function hangingAt(plan: readonly PlannedStep[], record: BayRecord): Map<string, Place> {
  const hanging = new Map<string, Place>();
  for (const { places } of plan)
    for (const place of places) {
      const last = lastSetupAt(record, place);
      if (last === null || FITTING[place.step] === FOR_LENGTHS) continue;
      const latest = record.setups.filter(({ gauge }) => gauge === last.gauge).at(-1);
      if (latest === last) hanging.set(last.gauge, place);
    }
  return hanging;
}

/**
 * The gauges of a place, likeliest first: the one that hung there or at the same station before, those that hang
 * nowhere yet, and those that would have to be taken from elsewhere; of the same kind the one used last before others.
 * @param usual tags in the order they were last used on this device.
 */
export function byLikelihood<Gauge extends { tag: string }>(
  gauges: readonly Gauge[],
  { plan, record, place }: { plan: readonly PlannedStep[]; record: BayRecord; place: Place },
  usual: readonly string[],
): Gauge[] {
  const station = place.dimensions[0]?.station ?? null;
  const hanging = hangingAt(plan, record);
  const here = record.setups.filter((setup) => setup.place === place.key).at(-1)?.gauge;
  const rank = (tag: string): number => {
    if (tag === here) return 0;
    const at = hanging.get(tag);
    if (at === undefined) return 2;
    return station !== null && at.dimensions[0]?.station === station ? 1 : 3;
  };
  const last = (tag: string) => (usual.includes(tag) ? usual.indexOf(tag) : usual.length);
  return [...gauges].sort((a, b) => rank(a.tag) - rank(b.tag) || last(a.tag) - last(b.tag));
}

/**
 * What a tracking gauge reads with its third pointer while it is set to a length: the next one of the step that shares
 * a point with it and was not read, or null.
 */
export function alsoRead(plan: readonly PlannedStep[], record: BayRecord, place: Place): Place | null {
  const ends = (one: Place) =>
    (lengthEnds(one.name) ?? []).map(({ point, side }) => `${point}.${side ?? ''}`);
  const own = ends(place);
  const places = plan.find(({ step }) => step === place.step)?.places ?? [];
  return (
    places.find(
      (one) =>
        one.key !== place.key &&
        lastSetupAt(record, one) === null &&
        !record.skipped.some((skipped) => skipped.place === one.key) &&
        ends(one).some((end) => own.includes(end)),
    ) ?? null
  );
}
