import type { RoundVerdict } from '@/lib/assess/types';
import { asText } from './as-text';
import { heights, round } from './batch';

/** The lines that the report prints of some verdicts; empty where there are none. */
export interface VerdictText<Text = Uint8Array<ArrayBuffer>> {
  heights: Text;
  rounds: Text;
}

export const verdictText = (verdicts: readonly RoundVerdict[]): VerdictText<string> => ({
  heights: verdicts.flatMap(heights).map(asText).join(',\n'),
  rounds: verdicts.map(round).map(asText).join(',\n'),
});

const encoder = new TextEncoder();

/** In UTF-8, as it is printed: what another thread has made is handed on without a copy. */
export const encoded = ({ heights, rounds }: VerdictText<string>): VerdictText => ({
  heights: encoder.encode(heights),
  rounds: encoder.encode(rounds),
});
