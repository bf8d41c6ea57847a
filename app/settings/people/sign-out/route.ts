import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { endSessionsOf } from '@/lib/access';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

const PLACE = '/settings/people';
const whom = z.object({ code: z.string().trim().min(1).max(80) });

/** Signs somebody out on every device. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, whom);
    if (refused !== null) return refused;
    const tell = (text: string) => leadTo(PLACE, [saying(text, PLACE)]);
    try {
      const ended = await endSessionsOf(viewer, fields?.code ?? '');
      return tell(words('settings')('people.signedOut', { code: fields?.code ?? '', n: ended }));
    } catch (error) {
      if (error instanceof RangeError) return tell(told(error.message));
      throw error;
    }
  });
}
