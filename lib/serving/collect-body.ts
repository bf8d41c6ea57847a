import type { ServerResponse } from 'node:http';
import { bytesOf } from './bytes-of';

/**
 * Has `done` told the body of an answer once all of it was handed over, as it was sent, compressed where it was.
 * @param most bytes; of a longer body nothing is told
 */
export function collectBody(response: ServerResponse, most: number, done: (body: Buffer) => void): void {
  let chunks: Buffer[] | null = [];
  let size = 0;
  const take = (chunk: unknown, encoding: unknown) => {
    if (chunks === null || chunk === undefined || chunk === null || typeof chunk === 'function') return;
    const bytes = bytesOf(chunk, encoding);
    size += bytes?.length ?? 0;
    if (bytes === null || size > most) chunks = null;
    else chunks.push(bytes);
  };
  // What compresses an answer puts itself before these two, and so hands over what it made of it.
  for (const name of ['write', 'end'] as const) {
    const send = response[name].bind(response) as (...args: unknown[]) => unknown;
    Object.assign(response, {
      [name]: (...args: unknown[]) => {
        take(args[0], args[1]);
        return send(...args);
      },
    });
  }
  response.once('finish', () => {
    if (chunks !== null) done(Buffer.concat(chunks, size));
  });
}
