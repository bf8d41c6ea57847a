/** Text in pieces as the body of an answer, made only as fast as the reader takes it. */
export function byteStream(pieces: AsyncGenerator<string, void, undefined>): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  return new ReadableStream({
    async pull(controller) {
      const next = await pieces.next();
      if (next.done === true) controller.close();
      else controller.enqueue(encoder.encode(next.value));
    },
    async cancel() {
      await pieces.return();
    },
  });
}
