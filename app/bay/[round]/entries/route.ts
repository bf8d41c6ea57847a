import type { NextRequest } from 'next/server';
import { admit, sentence } from '@/app/_shop/admit';
import { told } from '@/app/_words/told';
import { bodyOf } from '@/app/bay/_entries/body-of';
import { roundNumber } from '@/app/bay/_entries/round-number';
import {
  bayEntries,
  getBayRound,
  hasBayRound,
  OutOfOrder,
  refreshAfterEntries,
  takeBayEntries,
} from '@/lib/access';
import type { KeptEntry } from '@/lib/bay';

type Params = { params: Promise<{ round: string }> };

const NO_ROUND = 'The shop has no such round, or it is finished and you took no part in it.';
const noRound = () => sentence(404, told(NO_ROUND));

/** Entries as the device gets them: why one was not taken in the reader's own language. */
const kept = (entries: readonly KeptEntry[]) =>
  Response.json(
    { entries: entries.map((one) => ({ ...one, conflict: one.conflict && told(one.conflict) })) },
    { headers: { 'Cache-Control': 'no-store' } },
  );

/** What was entered after `?since=`, in the order of arrival: `{ entries }`. */
export async function GET(request: NextRequest, { params }: Params): Promise<Response> {
  const id = roundNumber((await params).round);
  return admit(request, async (viewer) => {
    const since = Number(request.nextUrl.searchParams.get('since') ?? '0');
    if (id === null || (await getBayRound(viewer, id)) === null) return noRound();
    if (!Number.isSafeInteger(since) || since < 0)
      return sentence(422, told('Say since which entry: a whole number, 0 for all.'));
    return kept(await bayEntries(viewer, id, since));
  });
}

/**
 * Takes `{ since, entries }` in order, each entry once, and answers with what was entered after `since`, these
 * included. Entries that do not follow on one another are answered with 409 and `{ message, device, last, taken }`:
 * the last sequence of the device that is kept, and whether another entry stands at the place already.
 */
export async function POST(request: NextRequest, { params }: Params): Promise<Response> {
  const id = roundNumber((await params).round);
  return admit(request, async (viewer) => {
    if (id === null || !(await hasBayRound(viewer, id))) return noRound();
    const body = await bodyOf(request);
    if (body instanceof Response) return body;
    try {
      await takeBayEntries(viewer, id, body.entries);
    } catch (error) {
      if (!(error instanceof OutOfOrder)) throw error;
      const { message, device, last, taken } = error;
      return Response.json({ message: told(message), device, last, taken }, { status: 409 });
    } finally {
      await refreshAfterEntries(viewer, id, body.entries);
    }
    return kept(await bayEntries(viewer, id, body.since));
  });
}
