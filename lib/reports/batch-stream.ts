import type { GaugeFigures, Rate, RoundVerdict, TechnicianFigures } from '@/lib/assess/types';
import { asText } from './as-text';
import { gauge, heights, rate, round, technician } from './batch';

/** A shop whose verdicts are many: they are read twice, a few at a time. */
export interface StoredShop {
  technicians: readonly TechnicianFigures[];
  gauges: readonly GaugeFigures[];
  firstTimeRight: Rate;
  rounds: () => AsyncIterable<RoundVerdict>;
}

/** The batch report as `batchReportText` writes it, from verdicts that are not held at once. */
export async function* batchReportStream(shop: StoredShop): AsyncGenerator<string, void, undefined> {
  yield '{\n';
  yield* list('technicians', shop.technicians, (one) => [technician(one)]);
  yield* list('gauges', shop.gauges, (one) => [gauge(one)]);
  yield* list('heights', shop.rounds(), heights);
  yield* list('rounds', shop.rounds(), (one) => [round(one)]);
  yield `"first_time_right": ${asText(rate(shop.firstTimeRight))}\n}\n`;
}

async function* list<T>(
  name: string,
  items: Iterable<T> | AsyncIterable<T>,
  reported: (item: T) => readonly object[],
): AsyncGenerator<string, void, undefined> {
  yield `"${name}": [`;
  let separator = '\n';
  for await (const item of items) {
    const lines = reported(item).map(asText);
    if (lines.length === 0) continue;
    yield separator + lines.join(',\n');
    separator = ',\n';
  }
  yield '\n],\n';
}
