import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { invite } from '@/lib/access';
import { origin } from '@/lib/identity';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

const PLACE = '/settings/people';
const whom = z.object({ code: z.string().trim().min(1).max(80) });

/** Makes the link of an invitation; it is shown once, on the page that this leads to. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, whom);
    if (refused !== null) return refused;
    const tell = (text: string) => leadTo(PLACE, [saying(text, PLACE)]);
    try {
      const token = await invite(viewer, fields?.code ?? '');
      return tell(
        words('settings')('people.invitation', {
          code: fields?.code ?? '',
          link: `${origin()}/invitation/${token}`,
        }),
      );
    } catch (error) {
      if (error instanceof RangeError) return tell(told(error.message));
      throw error;
    }
  });
}
