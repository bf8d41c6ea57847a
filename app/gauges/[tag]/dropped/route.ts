import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { gaugeAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { reportDropped } from '@/lib/access';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

const form = z.object({ note: z.string().trim().max(200) });

/** Takes a gauge that fell out of service, whoever says so. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ tag: string }> },
): Promise<Response> {
  const tag = labelFrom((await params).tag);
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, form);
    if (refused !== null) return refused;
    const place = gaugeAddress(tag);
    const t = words('gauges');
    const tell = (text: string) => leadTo(place, [saying(text, place)]);
    if (fields === null) return tell(t('dropped.tooLong'));
    try {
      await reportDropped(viewer, tag, fields.note === '' ? null : fields.note);
      return tell(t('dropped.done'));
    } catch (error) {
      if (error instanceof RangeError) return tell(t('dropped.fault', { fault: told(error.message) }));
      throw error;
    }
  });
}
