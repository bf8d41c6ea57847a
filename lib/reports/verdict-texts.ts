import { deflateRawSync, inflateRawSync } from 'node:zlib';
import type { RoundVerdict } from '@/lib/assess/types';
import { asText } from './as-text';
import { heights, round } from './batch';

/** The lines that the report prints of some verdicts; empty where there are none. */
export interface VerdictText<Text = string> {
  heights: Text;
  rounds: Text;
}

const BETWEEN = ',\n';

export const verdictText = (verdicts: readonly RoundVerdict[]): VerdictText => ({
  heights: verdicts.flatMap(heights).map(asText).join(BETWEEN),
  rounds: verdicts.map(round).map(asText).join(BETWEEN),
});

/** The lines of several, one after another. */
export const joined = (texts: readonly VerdictText[]): VerdictText => ({
  heights: lines(texts.map(({ heights }) => heights)),
  rounds: lines(texts.map(({ rounds }) => rounds)),
});

const lines = (texts: readonly string[]): string => texts.filter((text) => text !== '').join(BETWEEN);

/** Packed: the lines are much alike, so it takes a fifth of their room. In memory of its own, so that no more than it is handed on. */
export type Packed = Uint8Array<ArrayBuffer>;

export const packed = ({ heights, rounds }: VerdictText): VerdictText<Packed> => ({
  heights: pack(heights),
  rounds: pack(rounds),
});

/** At the least effort there is. */
const pack = (text: string): Packed => new Uint8Array(deflateRawSync(text, { level: 1, chunkSize: 1 << 17 }));

export const unpacked = (text: Packed): Uint8Array => inflateRawSync(text, { chunkSize: 1 << 18 });
