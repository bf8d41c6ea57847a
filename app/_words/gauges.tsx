import { Tag } from '@/app/_look/tag';
import type { GaugeKind } from '@/lib/measure';
import type { Gauge, GaugeState } from '@/lib/access';

export const KIND_NAMES: Record<GaugeKind, string> = {
  tram: 'Tram gauge',
  'digital-tram': 'Digital tram gauge',
  tracking: 'Tracking gauge',
  centering: 'Self-centering gauge',
  strut: 'Strut tower gauge',
  tape: 'Measuring tape',
};

export const STATE_NAMES: Record<GaugeState, string> = {
  'in-service': 'In service',
  'out-of-service': 'Out of service until verified',
  retired: 'Retired',
};

export function StateTag({ gauge }: { gauge: Gauge }) {
  return (
    <Tag name={gauge.state === 'in-service' ? 'within' : gauge.state === 'retired' ? 'open' : 'caution'}>
      {STATE_NAMES[gauge.state]}
    </Tag>
  );
}

export function kindName(kind: GaugeKind | null): string {
  return kind === null ? 'Kind not named' : KIND_NAMES[kind];
}
