import { lastSetupAt, type EntryBody, type Prompt } from '@/lib/bay';
import type { GaugeKind } from '@/lib/measure/types';
import { DoneAlready, type Standing } from '@/app/bay/_device/standing';

interface Hanging {
  gauge: string;
  gaugeKind: GaugeKind;
  /** Code of another hand, or null. */
  hand: string | null;
}

/**
 * The entry of a gauge that hangs now. What was left out is taken up with it.
 * @throws DoneAlready where another tab or device hung it meanwhile, and nothing was read there.
 */
export const hangBodies =
  ({ place, step, again }: Extract<Prompt, { do: 'hang' }>, asked: boolean, hanging: Hanging) =>
  ({ record, labels }: Standing): EntryBody[] => {
    const last = lastSetupAt(record, place);
    if (last?.readings.size === 0 && again === null && !asked) throw new DoneAlready();
    const out = record.skipped.filter((one) => one.step === step && (one.place ?? place.key) === place.key);
    return [
      ...out.map((one): EntryBody => ({ kind: 'resume', step: one.step, place: one.place })),
      { kind: 'hang', setup: labels(), place: place.key, ...hanging },
    ];
  };
