import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { sentence } from '@/app/_shop/admit';
import { told } from '@/app/_words/told';
import { entrySchema } from '@/lib/bay/entry-schema';

/** Entries that are sent at once; of more, a device sends the rest next. */
export const MOST_ENTRIES = 200;
/** More than so many entries take, bytes. */
const MOST_BYTES = 500_000;

const sent = z.object({
  since: z.int().min(0),
  entries: z.array(entrySchema).max(MOST_ENTRIES),
});

export type Sent = z.infer<typeof sent>;

/** What a device sends; a Response in words where it cannot be taken. */
export async function bodyOf(request: NextRequest): Promise<Sent | Response> {
  if (!(Number(request.headers.get('content-length') ?? Infinity) <= MOST_BYTES))
    return refuse(413, `That is more than can be taken at once. Send ${MOST_ENTRIES} entries at most.`);
  let body: unknown;
  try {
    body = await request.json();
  } catch {
    return refuse(422, 'Nothing was kept: what was sent is no JSON.');
  }
  const parsed = sent.safeParse(body);
  if (parsed.success) return parsed.data;
  const [fault] = parsed.error.issues;
  const place = (fault?.path ?? []).map(String).join('.');
  return refuse(422, `Nothing was kept: ${place === '' ? 'the whole' : place} is not as it has to be.`);
}

const refuse = (status: number, text: string): Response => sentence(status, told(text));
