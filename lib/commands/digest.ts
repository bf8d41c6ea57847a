import { createHash } from 'node:crypto';

/** Takes the SHA-256 of bytes as they pass. */
export class Digest {
  readonly #hash = createHash('sha256');

  async *of(bytes: AsyncIterable<unknown>): AsyncGenerator<Uint8Array, void, undefined> {
    for await (const chunk of bytes) {
      if (!(chunk instanceof Uint8Array)) throw new TypeError('A file is read as bytes.');
      this.#hash.update(chunk);
      yield chunk;
    }
  }

  /** In hex, once everything has passed. */
  hex(): string {
    return this.#hash.digest('hex');
  }
}
