import type { NextRequest } from 'next/server';
import { admit, leadTo } from '@/app/_shop/admit';
import { demand, followNow, mayHandle } from '@/lib/access';
import { begin } from '@/app/load/_staging/at-work';
import { stagedId } from '@/app/load/_staging/staged-file';
import { readStaged } from '@/app/load/_staging/staging';

/** Stores a staged file, all or nothing, and leads back to its page, which says what becomes of it. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ file: string }> },
): Promise<Response> {
  const id = stagedId.safeParse((await params).file);
  return admit(request, async (viewer) => {
    demand(viewer, 'load files');
    const staged = id.success ? await readStaged(id.data) : null;
    if (!id.success || staged === null || !mayHandle(viewer, staged)) return leadTo('/load?refused=gone');
    if (staged.result === null && staged.checked?.faultCount === 0)
      await begin('store', id.data, staged.bytes, () => followNow(viewer));
    return leadTo(`/load/${id.data}`);
  });
}
