/** What is handed to `write` or `end` of an answer, as bytes of their own; null where it is nothing to be sent. */
export function bytesOf(chunk: unknown, encoding: unknown): Buffer | null {
  if (typeof chunk === 'string')
    return Buffer.from(chunk, typeof encoding === 'string' ? (encoding as BufferEncoding) : 'utf8');
  return chunk instanceof Uint8Array ? Buffer.from(chunk) : null;
}
