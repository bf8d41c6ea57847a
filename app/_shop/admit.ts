import type { NextRequest } from 'next/server';
import type { z } from 'zod';
import { Refused } from '@/lib/access';
import { answering } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { viewerOf, type Viewer } from '@/lib/identity';
import { comesFromElsewhere } from './same-origin';
import { told } from '@/app/_words/told';

/** A form of a few words; what is larger is none. */
const MOST_BYTES = 20_000;

type Work = (viewer: Viewer) => Promise<Response>;

/**
 * The entrance of every endpoint that somebody signed in may use: refuses other sites' requests and strangers, and
 * answers with 403 where the data door refuses. The work has the words and units of whoever asks.
 */
export const admit = (request: NextRequest, work: Work): Promise<Response> =>
  answering(async () => {
    if (request.method !== 'GET' && comesFromElsewhere(request))
      return sentence(403, words('shop')('fromElsewhere'));
    const viewer = await viewerOf(request.headers);
    if (viewer === null) return sentence(401, words('shop')('notSignedIn'));
    try {
      return await work(viewer);
    } catch (error) {
      if (error instanceof Refused) return sentence(403, told(error.message));
      throw error;
    }
  });

/** The fields of a small form, parsed; a Response that refuses it where it is too large to be one. */
export async function fieldsOf<Schema extends z.ZodType>(
  request: NextRequest,
  schema: Schema,
): Promise<{ fields: z.infer<Schema> | null; refused: Response | null }> {
  if (!(Number(request.headers.get('content-length') ?? Infinity) <= MOST_BYTES))
    return { fields: null, refused: sentence(413, words('shop')('tooMuch')) };
  const given = Object.fromEntries(await request.formData());
  return { fields: schema.safeParse(given).data ?? null, refused: null };
}

/** Leads the browser on to a page, with cookies to keep. */
export function leadTo(place: string, cookies: readonly string[] = []): Response {
  const headers = new Headers({ Location: place });
  for (const cookie of cookies) headers.append('Set-Cookie', cookie);
  return new Response(null, { status: 303, headers });
}

export const sentence = (status: number, text: string): Response =>
  new Response(text, { status, headers: { 'Content-Type': 'text/plain; charset=utf-8' } });
