import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { demand, refreshSoon, removePerson } from '@/lib/access';

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
    const tell = (text: string) => leadTo(PLACE, [saying(text, PLACE)]);
    if (viewer.shop.demo) return tell('Nobody is removed from the demo shop.');
    if (fields === null || fields.code !== fields.again)
      return tell('Nobody was removed: write the code twice, alike, and a reason.');
    try {
      const pseudonym = await removePerson(viewer, fields.code, fields.reason);
      refreshSoon(viewer);
      return tell(`Removed. The readings stay under the name ${pseudonym}.`);
    } catch (error) {
      if (error instanceof RangeError) return tell(`Nobody was removed. ${error.message}`);
      throw error;
    }
  });
}
