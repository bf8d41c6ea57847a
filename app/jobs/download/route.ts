import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { measurementFileLines, type Reading } from '@/lib/measure';
import { jobQuery, questionFrom } from '../_list/question';
import { readingsFor } from '@/lib/access';
import { admit } from '@/app/_shop/admit';

/** Streams the readings of one job (`job=`) or of every job that the list's filter shows, as a measurement file. */
export function GET(request: NextRequest): Promise<Response> {
  return admit(request, (viewer) => {
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const job = z.string().min(1).max(80).safeParse(query.job);
    const { question } = questionFrom(query);
    const filter = job.success ? { jobs: [job.data] } : jobQuery(question, viewer.shop.timeZone);
    const stream = byteStream(fileText(readingsFor(viewer, filter)));
    return Promise.resolve(
      new Response(stream, {
        headers: {
          'Content-Type': 'text/csv; charset=utf-8',
          'Content-Disposition': `attachment; filename="${job.success ? `job-${plain(job.data)}` : 'measurements'}.csv"`,
          'Cache-Control': 'no-store',
        },
      }),
    );
  });
}

/** A label as a file name: letters, digits and dashes only. */
function plain(label: string): string {
  return label.replaceAll(/[^A-Za-z0-9-]+/g, '-');
}

/** Readings that are turned into text at a time: some 200 kB. */
const CHUNK = 2000;

/** The text of a measurement file, piece by piece; its first piece holds the header even where nothing follows. */
async function* fileText(readings: AsyncIterable<Reading>): AsyncGenerator<string, void, undefined> {
  const [header = ''] = measurementFileLines([]);
  const text = (chunk: Reading[]) => [...measurementFileLines(chunk)].slice(1).join('');
  yield header;
  let chunk: Reading[] = [];
  for await (const reading of readings) {
    chunk.push(reading);
    if (chunk.length === CHUNK) {
      yield text(chunk);
      chunk = [];
    }
  }
  if (chunk.length > 0) yield text(chunk);
}

/** Sent only as fast as the reader takes it. */
function byteStream(pieces: AsyncGenerator<string, void, undefined>): ReadableStream<Uint8Array> {
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
