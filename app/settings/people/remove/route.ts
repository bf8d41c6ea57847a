import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { demand, refreshSoon, removePerson } from '@/lib/access';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

const PLACE = '/settings/people';
const removal = z.object({
  code: z.string().trim().min(1).max(80),
  again: z.string().trim(),
  reason: z.string().trim().min(1).max(200),
});

/** Removes a person for good; the numbers stay under a pseudonym. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'manage people');
    const { fields, refused } = await fieldsOf(request, removal);
    if (refused !== null) return refused;
    const t = words('settings');
    const tell = (text: string) => leadTo(PLACE, [saying(text, PLACE)]);
    if (viewer.shop.demo) return tell(t('people.removal.demo'));
    if (fields === null || fields.code !== fields.again) return tell(t('people.removal.incomplete'));
    try {
      const pseudonym = await removePerson(viewer, fields.code, fields.reason);
      refreshSoon(viewer);
      return tell(t('people.removal.done', { pseudonym }));
    } catch (error) {
      if (error instanceof RangeError) return tell(t('people.removal.fault', { fault: told(error.message) }));
      throw error;
    }
  });
}
