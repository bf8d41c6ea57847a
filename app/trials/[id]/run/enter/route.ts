import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { typedLength, typedNumber } from '@/app/_words/typed-number';
import { words } from '@/app/_words/words';
import { enterTrialReading } from '@/lib/access';
import { trialNumber } from '@/app/trials/_parts/trial-number';
import { trialAddress } from '@/app/trials/_parts/words';

const entry = z.object({ run: typedNumber, repeat: typedNumber, value: typedLength });

/** Keeps one reading and leads to the next place. What was entered is not told back: the next is read blind. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = trialNumber((await params).id);
  return admit(request, async (viewer) => {
    if (id === null) return leadTo('/trials');
    const { fields, refused } = await fieldsOf(request, entry);
    if (refused !== null) return refused;
    const t = words('trials');
    const place = `${trialAddress(id)}/run`;
    const tell = (text: string) => leadTo(place, [saying(text, place)]);
    if (fields === null) return tell(t('run.write', { unit: unit(), example: bareMillimetres(307.5) }));
    try {
      await enterTrialReading(viewer, id, fields);
      return tell(t('run.kept', { run: String(fields.run), repeat: fields.repeat }));
    } catch (error) {
      if (error instanceof RangeError) return tell(t('run.notKept', { fault: told(error.message) }));
      throw error;
    }
  });
}
