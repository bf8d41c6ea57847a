import { Tag } from '@/app/_look/tag';
import type { GaugeKind } from '@/lib/measure';
import type { Gauge, GaugeState } from '@/lib/access';
import { words } from '@/app/_words/words';

export const gaugeStateName = (state: GaugeState): string => words('terms')(`gaugeStates.${state}`);

export function StateTag({ gauge }: { gauge: Gauge }) {
  return (
    <Tag name={gauge.state === 'in-service' ? 'within' : gauge.state === 'retired' ? 'open' : 'caution'}>
      {gaugeStateName(gauge.state)}
    </Tag>
  );
}

export const kindName = (kind: GaugeKind | null): string => words('terms')(`kinds.${kind ?? 'none'}`);
