import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { revokeToken } from '@/lib/access';
import { words } from '@/app/_words/words';

const PLACE = '/settings/tokens';
const which = z.object({ id: z.coerce.number().int().min(1).max(2_147_483_647) });

/** Takes a token's use away at once. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, which);
    if (refused !== null) return refused;
    const done = await revokeToken(viewer, fields?.id ?? 0);
    const text = words('settings')(done ? 'tokens.revokedNow' : 'tokens.noSuch');
    return leadTo(PLACE, [saying(text, PLACE)]);
  });
}
