import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { gaugeAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { demand, recordLook } from '@/lib/access';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

const form = z.object({ looks: z.enum(['as-ever', 'bent']), note: z.string().trim().max(200) });

/** Keeps that a gauge was looked at, and how it looked. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ tag: string }> },
): Promise<Response> {
  const tag = labelFrom((await params).tag);
  return admit(request, async (viewer) => {
    demand(viewer, 'keep gauges');
    const { fields, refused } = await fieldsOf(request, form);
    if (refused !== null) return refused;
    const place = gaugeAddress(tag);
    const t = words('gauges');
    const tell = (text: string) => leadTo(place, [saying(text, place)]);
    if (fields === null) return tell(t('look.incomplete'));
    const passed = fields.looks === 'as-ever';
    try {
      await recordLook(viewer, tag, { passed, note: fields.note === '' ? null : fields.note });
      return tell(t(passed ? 'look.recorded' : 'look.outNow'));
    } catch (error) {
      if (error instanceof RangeError) return tell(t('verify.fault', { fault: told(error.message) }));
      throw error;
    }
  });
}
