import { FITTING, type BayRecord, type Prompt, type RecordedSetup } from '@/lib/bay';
import type { KnownGauge } from '@/app/bay/_device/knowledge';

/** A setup that comes with its first reading: it has no label yet. */
export const NOT_YET = '';

/**
 * Length after length with one gauge: once it was chosen, a number and Enter is all it takes, and the setting is
 * entered with the number. Null where the gauge has to be chosen first.
 */
export function straightOn(
  prompt: Prompt,
  record: BayRecord,
  gauges: readonly KnownGauge[],
): Extract<Prompt, { do: 'read' }> | null {
  if (prompt.do !== 'hang') return null;
  const { place, step } = prompt;
  const [dimension] = place.dimensions;
  if (dimension?.quantity !== 'length') return null;
  const kinds = FITTING[step];
  const last = record.setups.findLast(({ gaugeKind }) => kinds.includes(gaugeKind));
  if (last === undefined || gauges.find(({ tag }) => tag === last.gauge)?.inService !== true) return null;
  const { gauge, gaugeKind, hand } = last;
  const setup: RecordedSetup = {
    label: NOT_YET,
    place: place.key,
    gauge,
    gaugeKind,
    hand,
    at: 0,
    readings: new Map(),
  };
  return { do: 'read', step, place, setup, dimension, repeat: 1, blind: false };
}
