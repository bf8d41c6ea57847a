import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { demand, makeToken, TOKEN_SCOPES } from '@/lib/access';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

const PLACE = '/settings/tokens';
const DAY = 24 * 3600 * 1000;
const ticked = z.literal('yes').optional();
const wanted = z.object({
  name: z.string().max(200),
  days: z.coerce.number().int().min(0).max(3650),
  ...(Object.fromEntries(TOKEN_SCOPES.map((scope) => [scope, ticked])) as Record<
    (typeof TOKEN_SCOPES)[number],
    typeof ticked
  >),
});

/** Makes a token; it is shown once, on the page that this leads to. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'change settings');
    const { fields, refused } = await fieldsOf(request, wanted);
    if (refused !== null) return refused;
    const t = words('settings');
    const tell = (text: string) => leadTo(PLACE, [saying(text, PLACE)]);
    if (fields === null) return tell(t('tokens.incomplete'));
    const { name, days, ...scopes } = fields;
    try {
      const token = await makeToken(viewer, {
        name,
        scopes: TOKEN_SCOPES.filter((scope) => scopes[scope] === 'yes'),
        expiresAt: days === 0 ? null : Date.now() + days * DAY,
      });
      return tell(t('tokens.made', { name: name.trim(), token }));
    } catch (error) {
      if (error instanceof RangeError) return tell(told(error.message));
      throw error;
    }
  });
}
