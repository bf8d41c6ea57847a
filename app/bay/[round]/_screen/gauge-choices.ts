import { byLikelihood, FITTING, hangingAt, type BayRecord, type Place, type PlannedStep } from '@/lib/bay';
import type { KnownGauge } from '@/app/bay/_device/knowledge';
import { placeName } from './names';

export interface GaugeChoice extends KnownGauge {
  /** False where it is out of service. */
  usable: boolean;
  /** Where it hangs now, if elsewhere. */
  hangsAt: string | null;
}

/** The gauges that fit a place, likeliest first; those out of service too, to say why they cannot be chosen. */
export function gaugeChoices(
  gauges: readonly KnownGauge[],
  at: { plan: readonly PlannedStep[]; record: BayRecord; place: Place },
  usual: readonly string[],
): GaugeChoice[] {
  const kinds = FITTING[at.place.step];
  const hanging = hangingAt(at.plan, at.record);
  const fitting = gauges.filter(({ kind }) => kind !== null && kinds.includes(kind));
  return byLikelihood(fitting, at, usual).map((gauge) => {
    const where = hanging.get(gauge.tag);
    return {
      ...gauge,
      usable: gauge.inService,
      hangsAt: where === undefined || where.key === at.place.key ? null : placeName(where),
    };
  });
}
