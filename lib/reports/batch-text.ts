import type { ShopAssessment } from '@/lib/assess/shop-assessment';
import { asText } from './as-text';
import { gauge, rate, technician } from './batch';
import { type Packed, unpacked, type VerdictText, verdictText } from './verdict-texts';

/**
 * The batch report as JSON text in pieces, one item a line, so that a large shop need not be held twice in memory.
 * Throws a RangeError for a number that JSON cannot hold: it would turn into null without a reason.
 */
export function batchReportText(shop: ShopAssessment): Generator<string> {
  const parts: VerdictText[] = [];
  for (let from = 0; from < shop.rounds.length; from += PART)
    parts.push(verdictText(shop.rounds.slice(from, from + PART)));
  return reportAround(shop, parts, (text) => text);
}

/** Rounds of one part. */
const PART = 50;

/** The same around verdicts that are text already, packed, part by part; in pieces of UTF-8. */
export const packedReport = (
  shop: Omit<ShopAssessment, 'rounds'>,
  verdicts: readonly VerdictText<Packed>[],
): Generator<string | Uint8Array> => reportAround(shop, verdicts, unpacked);

function* reportAround<Kept, Told extends string | Uint8Array>(
  shop: Omit<ShopAssessment, 'rounds'>,
  verdicts: readonly VerdictText<Kept>[],
  told: (kept: Kept) => Told,
): Generator<string | Told> {
  const each = function* (of: keyof VerdictText): Generator<Told> {
    for (const verdict of verdicts) yield told(verdict[of]);
  };
  yield '{\n';
  yield* list('technicians', shop.technicians.map(technician).map(asText));
  yield* list('gauges', shop.gauges.map(gauge).map(asText));
  yield* list('heights', each('heights'));
  yield* list('rounds', each('rounds'));
  yield `"first_time_right": ${asText(rate(shop.firstTimeRight))}\n}\n`;
}

/** @param texts one item or several, a line each; empty ones are none. */
function* list<Text extends string | Uint8Array>(
  name: string,
  texts: Iterable<Text>,
): Generator<string | Text> {
  yield `"${name}": [`;
  let separator = '\n';
  for (const text of texts) {
    if (text.length === 0) continue;
    yield separator;
    yield text;
    separator = ',\n';
  }
  yield '\n],\n';
}
