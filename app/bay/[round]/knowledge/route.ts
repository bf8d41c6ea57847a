import type { NextRequest } from 'next/server';
import { admit, sentence } from '@/app/_shop/admit';
import { told } from '@/app/_words/told';
import { roundNumber } from '@/app/bay/_entries/round-number';
import { bayKnowledge, getBayRound } from '@/lib/access';

/** What a device needs to know of the shop to say at once what a reading means. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ round: string }> },
): Promise<Response> {
  const id = roundNumber((await params).round);
  return admit(request, async (viewer) => {
    if (id === null || (await getBayRound(viewer, id)) === null)
      return sentence(404, told('The shop has no such round, or it is finished and you took no part in it.'));
    return Response.json(await bayKnowledge(viewer), { headers: { 'Cache-Control': 'no-store' } });
  });
}
