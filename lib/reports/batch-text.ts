import type { ShopAssessment } from '@/lib/assess/shop-assessment';
import { asText } from './as-text';
import { gauge, rate, technician } from './batch';
import { VerdictTexts } from './verdict-texts';

/**
 * The batch report as JSON text in pieces, one item a line, so that a large shop need not be held twice in memory.
 * Throws a RangeError for a number that JSON cannot hold: it would turn into null without a reason.
 * @param verdicts of all rounds, where the assessment was made without holding them.
 */
export function* batchReportText(shop: ShopAssessment, verdicts = wholeOf(shop)): Generator<string> {
  yield '{\n';
  yield* list('technicians', shop.technicians.map(technician).map(asText));
  yield* list('gauges', shop.gauges.map(gauge).map(asText));
  yield* list('heights', verdicts.heights());
  yield* list('rounds', verdicts.rounds());
  yield `"first_time_right": ${asText(rate(shop.firstTimeRight))}\n}\n`;
}

/** Rounds of one part. */
const PART = 50;

function wholeOf(shop: ShopAssessment): VerdictTexts {
  const texts = new VerdictTexts();
  for (let from = 0; from < shop.rounds.length; from += PART)
    texts.take(from / PART, shop.rounds.slice(from, from + PART));
  return texts;
}

/** @param texts one item or several, a line each; empty ones are none. */
function* list(name: string, texts: Iterable<string>): Generator<string> {
  yield `"${name}": [`;
  let separator = '\n';
  for (const text of texts) {
    if (text === '') continue;
    yield separator + text;
    separator = ',\n';
  }
  yield '\n],\n';
}
