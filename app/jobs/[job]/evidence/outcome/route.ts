import type { NextRequest } from 'next/server';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { address, jobAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { refreshSoon } from '@/lib/refresh';
import { getShop, recordOutcome } from '@/lib/store';
import { whatWasSaid } from './what-was-said';

/** A form of a few words; what is larger is none. */
const MOST_BYTES = 10_000;

/** Keeps what a re-check showed, has verdicts and learning follow, and leads back to the round's evidence. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ job: string }> },
): Promise<Response> {
  const job = labelFrom((await params).job);
  if (comesFromElsewhere(request))
    return new Response('An outcome can only be recorded from a page of this shop.', { status: 403 });
  if (Number(request.headers.get('content-length') ?? Infinity) > MOST_BYTES)
    return new Response('That is more than this form can hold.', { status: 413 });
  const form = Object.fromEntries(await request.formData());
  const said = whatWasSaid.safeParse(form);
  if (!said.success)
    return leadTo(job, { round: typeof form.round === 'string' ? form.round : '', outcome: 'incomplete' });
  const { round, height, cause, by, note } = said.data;
  const shop = await getShop();
  try {
    await recordOutcome(shop.id, { job, ...height, cause, by, note });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return leadTo(job, { round, outcome: 'unknown' });
  }
  refreshSoon(shop.id);
  return leadTo(job, { round, outcome: 'recorded' });
}

function leadTo(job: string, query: Record<string, string>): Response {
  const place = `${address(`${jobAddress(job)}/evidence`, query)}#outcome`;
  return new Response(null, { status: 303, headers: { Location: place } });
}
