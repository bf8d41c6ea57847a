import type { ShopAssessment } from '@/lib/assess/shop-assessment';
import { gauge, heights, rate, round, technician } from './batch';

/**
 * The batch report as JSON text in pieces, one item a line, so that a large shop need not be held twice in memory.
 * Throws a RangeError for a number that JSON cannot hold: it would turn into null without a reason.
 */
export function* batchReportText(shop: ShopAssessment): Generator<string> {
  yield '{\n';
  yield* list('technicians', shop.technicians, technician);
  yield* list('gauges', shop.gauges, gauge);
  yield* list('heights', allHeights(shop), (height) => height);
  yield* list('rounds', shop.rounds, round);
  yield `"first_time_right": ${asText(rate(shop.firstTimeRight))}\n}\n`;
}

function* allHeights(shop: ShopAssessment) {
  for (const verdict of shop.rounds) yield* heights(verdict);
}

function* list<T>(name: string, items: Iterable<T>, report: (item: T) => unknown): Generator<string> {
  yield `"${name}": [`;
  let separator = '\n';
  for (const item of items) {
    yield separator + asText(report(item));
    separator = ',\n';
  }
  yield '\n],\n';
}

export function asText(value: unknown): string {
  return JSON.stringify(value, (key, field: unknown) => {
    if (typeof field === 'number' && !Number.isFinite(field)) {
      throw new RangeError(`The report's ${key} is ${field}, which is not a number that can be printed.`);
    }
    return field;
  });
}
