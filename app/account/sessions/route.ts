import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { endOwnSessions } from '@/lib/access';
import { words } from '@/app/_words/words';

const which = z.object({ only: z.string().max(100).optional() });

/** Ends one of the viewer's own sessions, or all but this one. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, which);
    if (refused !== null) return refused;
    const ended = await endOwnSessions(viewer, fields?.only);
    return leadTo('/account', [saying(words('account')('sessions.ended', { n: ended }), '/account')]);
  });
}
