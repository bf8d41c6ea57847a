import type { RoundVerdict } from '@/lib/assess/types';
import { asText } from './as-text';
import { heights, round } from './batch';

/** Verdicts as the lines that the report prints of them, taken part by part in any order: a fifth of their room. */
export class VerdictTexts {
  readonly #heights: string[] = [];
  readonly #rounds: string[] = [];

  take(part: number, verdicts: readonly RoundVerdict[]): void {
    this.#heights[part] = verdicts.flatMap(heights).map(asText).join(',\n');
    this.#rounds[part] = verdicts.map(round).map(asText).join(',\n');
  }

  /** Lines of the heights, in the order of the parts; empty where a part has none. */
  heights(): Iterable<string> {
    return this.#heights;
  }

  rounds(): Iterable<string> {
    return this.#rounds;
  }
}
