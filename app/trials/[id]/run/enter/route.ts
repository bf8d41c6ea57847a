import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { typedNumber } from '@/app/_words/typed-number';
import { enterTrialReading } from '@/lib/access';
import { trialNumber } from '@/app/trials/_parts/trial-number';
import { trialAddress } from '@/app/trials/_parts/words';

const entry = z.object({ run: typedNumber, repeat: typedNumber, value: typedNumber });

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
    const place = `${trialAddress(id)}/run`;
    const tell = (text: string) => leadTo(place, [saying(text, place)]);
    if (fields === null) return tell('Nothing was kept: write what you read in mm, such as 307.5.');
    try {
      await enterTrialReading(viewer, id, fields);
      return tell(`Run ${fields.run}, reading ${fields.repeat} is kept.`);
    } catch (error) {
      if (error instanceof RangeError) return tell(`Nothing was kept. ${error.message}`);
      throw error;
    }
  });
}
