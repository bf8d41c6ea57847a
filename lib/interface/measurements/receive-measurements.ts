import { rm } from 'node:fs/promises';
import { z } from 'zod';
import { MAX_FILE_BYTES } from '@/lib/measure';
import { note } from '@/lib/observe';
import { followNow } from '@/lib/refresh';
import type { TokenHolder } from '@/lib/store/tokens';
import { problem } from '../problem';
import { answerFor } from './answer';
import { takeApart } from './in-own-process';

const question = z.object({
  dry_run: z.enum(['true', 'false']).default('false'),
  name: z.string().min(1).max(200).default('measurements.csv'),
});

/** Writes a body down as it arrives; answers with the refusal where it is too large or cut off, and leaves nothing then. */
export type WriteDown = (
  body: ReadableStream<Uint8Array>,
  announced: number | null,
) => Promise<{ path: string; sha256: string; bytes: number } | Response>;

/** Takes a measurement file whose text is the body of the request. */
export async function receiveMeasurements(
  holder: TokenHolder,
  request: Request,
  writeDown: WriteDown,
): Promise<Response> {
  const asked = question.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  if (!asked.success)
    return problem(400, 'dry_run is true or false; name has 1 to 200 characters. Nothing was stored.');
  const refused = refusedByHead(request);
  if (refused !== null) return refused;
  const start = performance.now();
  let path: string | null = null;
  try {
    const written = await writeDown(request.body ?? new Blob([]).stream(), announcedBytes(request));
    if (written instanceof Response) return written;
    path = written.path;
    const { sha256, bytes } = written;
    const shop = holder.shop.id;
    const file = { shop, path, name: asked.data.name, bytes, sha256, dryRun: asked.data.dry_run === 'true' };
    const taken = await takeApart(file);
    if (taken.faultCount > 0) note.fileRefused({ shop, bytes, faults: taken.faultCount });
    if (taken.stored !== null) {
      const seconds = (performance.now() - start) / 1000;
      const { added } = taken.stored;
      note.loaded({ shop, bytes, readings: taken.summary.readings, added, seconds });
      if (taken.stored.jobs.length > 0) await followNow(shop);
    }
    return answerFor(file, taken);
  } finally {
    if (path !== null) await rm(path, { force: true });
  }
}

function refusedByHead(request: Request): Response | null {
  const [type = ''] = (request.headers.get('content-type') ?? '').split(';');
  if (type.trim().toLowerCase() !== 'text/csv')
    return problem(415, 'Send the file as it is, with Content-Type: text/csv.');
  if ((request.headers.get('content-encoding') ?? 'identity') !== 'identity')
    return problem(415, 'Send the file without compression.');
  const announced = announcedBytes(request);
  if (announced !== null && announced > MAX_FILE_BYTES)
    return problem(413, `The file is larger than ${MAX_FILE_BYTES / 1e6} MB. Split it by date.`);
  return null;
}

function announcedBytes(request: Request): number | null {
  const announced = Number(request.headers.get('content-length') ?? 'NaN');
  return Number.isSafeInteger(announced) && announced >= 0 ? announced : null;
}
