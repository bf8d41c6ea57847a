import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { told } from '@/app/_words/told';
import { typedLength, typedNumber } from '@/app/_words/typed-number';
import { beginBayRound } from '@/lib/access';
import { STAGES } from '@/lib/measure/types';

const PLACE = '/bay';
const round = z.object({
  job: z.string().trim().min(1).max(80),
  sheet: z.string().min(1).max(80),
  stage: z.enum(STAGES),
  attempt: typedNumber,
  clearance: typedLength,
});

/** Begins a round beside the car, or joins it where it is open, and leads to it. */
export async function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, round);
    if (refused !== null) return refused;
    const tell = (text: string) => leadTo(PLACE, [saying(told(text), PLACE)]);
    if (fields === null)
      return tell(
        'No round was begun: it needs a job, a sheet, an attempt such as 1, and a clearance such as 100 mm.',
      );
    try {
      return leadTo(`${PLACE}/${await beginBayRound(viewer, fields)}`);
    } catch (error) {
      if (error instanceof RangeError) return tell(`No round was begun. ${error.message}`);
      throw error;
    }
  });
}
