import type { GaugeKind } from '@/lib/measure';
import type { GaugeModel } from './gauge';
import { ORDINARY_HAND, type TechnicianModel } from './hand';
import { randomAt, type Random } from './random';
import { SHEETS } from './sheets';
import { LEFTOVER } from './stories';
import type { Workshop } from './workshop';

const GAUGES: readonly (readonly [GaugeKind, number, string])[] = [
  ['centering', 6, 'C'],
  ['strut', 1, 'S'],
  ['tram', 1, 'M'],
  ['digital-tram', 1, 'D'],
  ['tracking', 1, 'K'],
  ['tape', 1, 'T'],
];

/** One shop of a group: ordinary hands and gauges that differ as people and tools do. */
export function groupWorkshop(
  seed: number,
  shop: number,
  technicians: number,
  reading: Workshop['reading'],
): Workshop {
  const random = randomAt(seed, 0, shop);
  const prefix = String(shop + 1).padStart(2, '0');
  return {
    technicians: Array.from({ length: technicians }, (_, index) =>
      technician(`T${prefix}${String(index + 1).padStart(2, '0')}`, random),
    ),
    gauges: GAUGES.flatMap(([kind, count, letter]) =>
      Array.from({ length: count }, (_, index) => gauge(`${letter}${prefix}${index + 1}`, kind, random)),
    ),
    sheets: reading === 'brief' ? SHEETS.filter((sheet) => sheet.stations.length <= 5) : SHEETS,
    leftoverShare: () => LEFTOVER,
    reading,
  };
}

function technician(code: string, random: Random): TechnicianModel {
  const hand = {
    ...ORDINARY_HAND,
    repeatability: random.between(0.35, 0.8),
    setting: random.between(0.45, 1.2),
    missetRate: random.between(0.02, 0.11),
    bias: random.normal(0.4),
  };
  return { code, load: random.between(1, 3), hands: [{ from: -Infinity, hand }] };
}

function gauge(tag: string, kind: GaugeKind, random: Random): GaugeModel {
  const hangs = kind === 'centering' || kind === 'strut';
  return {
    tag,
    kind,
    fixedMark: hangs ? random.whole(13, 34) : null,
    errors: [{ from: -Infinity, error: random.normal(0.2) }],
  };
}
