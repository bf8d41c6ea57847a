import { deflateRawSync, inflateRawSync } from 'node:zlib';
import type { RoundVerdict } from '@/lib/assess/types';
import { asText } from './as-text';
import { heights, round } from './batch';

/** At the least effort there is; the lines are much alike, so it leaves a fifth of their room. */
const packed = (text: string): Buffer => deflateRawSync(text, { level: 1 });

/** Verdicts as the lines that the report prints of them, packed, taken part by part in any order. */
export class VerdictTexts {
  readonly #heights: Buffer[] = [];
  readonly #rounds: Buffer[] = [];

  take(part: number, verdicts: readonly RoundVerdict[]): void {
    this.#heights[part] = packed(verdicts.flatMap(heights).map(asText).join(',\n'));
    this.#rounds[part] = packed(verdicts.map(round).map(asText).join(',\n'));
  }

  /** Lines of the heights, in the order of the parts; empty where a part has none. */
  heights(): Iterable<string> {
    return unpacked(this.#heights);
  }

  rounds(): Iterable<string> {
    return unpacked(this.#rounds);
  }
}

function* unpacked(texts: readonly Buffer[]): Generator<string> {
  for (const text of texts) yield inflateRawSync(text).toString();
}
