import type { NextRequest } from 'next/server';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { address, jobAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { followNow, reviseReading } from '@/lib/access';
import { revision } from './form';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

/** Corrects, excludes or includes a reading, has figures and verdicts follow, and leads back to its history. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ job: string }> },
): Promise<Response> {
  const job = labelFrom((await params).job);
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, revision);
    if (refused !== null) return refused;
    const t = words('readings');
    const place = `${jobAddress(job)}/readings`;
    const tell = (text: string, setup?: string) => leadTo(address(place, { setup }), [saying(text, place)]);
    if (fields === null)
      return tell(t('revise.incomplete', { unit: unit(), example: bareMillimetres(351.5) }));
    const { reading, ...rest } = fields;
    try {
      await reviseReading(viewer, { job, ...reading, ...rest });
    } catch (error) {
      if (error instanceof RangeError) return tell(t('revise.fault', { fault: told(error.message) }));
      throw error;
    }
    await followNow(viewer, job);
    return tell(t('revise.done'), reading.setup);
  });
}
