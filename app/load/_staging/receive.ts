import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream as NodeStream } from 'node:stream/web';
import { MAX_FILE_BYTES } from '@/lib/measure';
import { words } from '@/app/_words/words';

export class TooLarge extends Error {}
export class CutOff extends Error {}

/**
 * Writes an upload to `path` as it arrives, never holding it in memory.
 * @param expected The length that the sender announced, or null.
 * @returns The SHA-256 of the bytes, in hex, and how many they are.
 * @throws TooLarge beyond `MAX_FILE_BYTES`; CutOff where fewer bytes came than were announced. Nothing is left at
 * `path` then.
 */
export async function receive(
  body: ReadableStream<Uint8Array>,
  path: string,
  expected: number | null,
): Promise<{ sha256: string; bytes: number }> {
  const hash = createHash('sha256');
  let bytes = 0;
  try {
    await pipeline(
      Readable.fromWeb(body as NodeStream<Uint8Array>),
      async function* (pieces: AsyncIterable<Uint8Array>) {
        for await (const piece of pieces) {
          bytes += piece.byteLength;
          if (bytes > MAX_FILE_BYTES) throw new TooLarge(tooLarge(bytes));
          hash.update(piece);
          yield piece;
        }
      },
      createWriteStream(path, { flags: 'wx', mode: 0o600 }),
    );
    if (expected !== null && bytes !== expected) {
      throw new CutOff(words('load')('cutOff', { arrived: String(bytes), of: String(expected) }));
    }
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  }
  return { sha256: hash.digest('hex'), bytes };
}

/** The sentence for a file beyond the limit. */
export function tooLarge(bytes: number): string {
  const megabytes = (count: number) => `${Math.round(count / 1e6)} MB`;
  return words('load')('tooLarge', { most: megabytes(MAX_FILE_BYTES), size: megabytes(bytes) });
}
