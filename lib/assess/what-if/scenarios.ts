import type { Scenario, WorkingGauge, WorkingShop } from './types';

/** As now, and the changes that a manager asks about most. */
export function usualScenarios(shop: WorkingShop): Scenario[] {
  const scenarios: Scenario[] = [
    { name: 'As now' },
    { name: 'Everyone reads twice as often', readings: 2 * shop.readings },
    { name: 'A dimension that is out is hung again once', rehang: 'out' },
    { name: 'Another technician hangs again what is out', rehang: 'out', rehangBy: 'another' },
    { name: 'Every gauge is hung twice, the mean counts', rehang: 'all' },
  ];
  const best = bestHalf(shop.gauges);
  if (best.length < shop.gauges.length)
    scenarios.push({ name: 'Only the half of the gauges that are nearest', gauges: best });
  return scenarios;
}

/** As now, but for one gauge that is taken out of service. */
export const withoutGauge = (shop: WorkingShop, without: string): Scenario => ({
  name: `Gauge ${without} out of service`,
  gauges: shop.gauges.map(({ gauge }) => gauge).filter((gauge) => gauge !== without),
});

/** The half of the gauges, rounded up, with the smallest expected square of their bias: bias² + its standard error². */
export function bestHalf(gauges: readonly WorkingGauge[]): string[] {
  return [...gauges]
    .sort(
      (a, b) => a.bias ** 2 + a.biasSe ** 2 - (b.bias ** 2 + b.biasSe ** 2) || (a.gauge < b.gauge ? -1 : 1),
    )
    .slice(0, Math.ceil(gauges.length / 2))
    .map(({ gauge }) => gauge);
}
