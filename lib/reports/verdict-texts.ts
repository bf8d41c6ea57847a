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

/**
 * UTF-8, of a large file deflated: the lines are much alike, so it takes a fifth of their room. In memory of its own, so
 * that no more than it is handed on.
 */
export interface Packed {
  bytes: Uint8Array<ArrayBuffer>;
  isDeflated: boolean;
}

/** Of a file with so many readings all texts are 50 MB: up to there it is not worth the time to make them smaller. */
const ROOMY = 300_000;

/** @param readings of the whole file. */
export function packed({ heights, rounds }: VerdictText, readings: number): VerdictText<Packed> {
  const pack = readings <= ROOMY ? plain : deflated;
  return { heights: pack(heights), rounds: pack(rounds) };
}

const encoder = new TextEncoder();

const plain = (text: string): Packed => ({ bytes: encoder.encode(text), isDeflated: false });

/** At the least effort there is. */
const deflated = (text: string): Packed => ({
  bytes: new Uint8Array(deflateRawSync(text, { level: 1, chunkSize: 1 << 17 })),
  isDeflated: true,
});

export const unpacked = ({ bytes, isDeflated }: Packed): Uint8Array =>
  isDeflated ? inflateRawSync(bytes, { chunkSize: 1 << 18 }) : bytes;
