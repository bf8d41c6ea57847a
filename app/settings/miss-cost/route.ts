import type { NextRequest } from 'next/server';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { getShop, setMissCost } from '@/lib/store';
import { missCostForm } from './form';

const MOST_BYTES = 10_000;

/** Keeps what the manager says missing damage costs, and leads back to the settings. */
export async function POST(request: NextRequest): Promise<Response> {
  if (comesFromElsewhere(request))
    return new Response('This can only be set from a page of this shop.', { status: 403 });
  if (Number(request.headers.get('content-length') ?? Infinity) > MOST_BYTES)
    return new Response('That is more than this form can hold.', { status: 413 });
  const said = missCostForm.safeParse(Object.fromEntries(await request.formData()));
  if (!said.success) return leadTo('refused');
  const shop = await getShop();
  try {
    await setMissCost(shop.id, said.data);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return leadTo('refused');
  }
  return leadTo('kept');
}

const leadTo = (answer: string): Response =>
  new Response(null, { status: 303, headers: { Location: `/settings?answer=${answer}` } });
