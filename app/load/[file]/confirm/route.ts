import type { NextRequest } from 'next/server';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { refreshSoon } from '@/lib/refresh';
import { getShop } from '@/lib/store';
import { begin } from '../../_staging/at-work';
import { stagedId } from '../../_staging/staged-file';
import { readStaged } from '../../_staging/staging';

/** Stores a staged file, all or nothing, and leads back to its page, which says what becomes of it. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ file: string }> },
): Promise<Response> {
  const id = stagedId.safeParse((await params).file);
  if (comesFromElsewhere(request))
    return new Response('A file can only be confirmed from a page of this shop.', { status: 403 });
  const staged = id.success ? await readStaged(id.data) : null;
  if (!id.success || staged === null) return leadTo('/load?refused=gone');
  if (staged.result === null && staged.checked?.faultCount === 0) {
    const shop = await getShop();
    await begin('store', id.data, staged.bytes, () => refreshSoon(shop.id));
  }
  return leadTo(`/load/${id.data}`);
}

function leadTo(place: string): Response {
  return new Response(null, { status: 303, headers: { Location: place } });
}
