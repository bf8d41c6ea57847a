import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { typedLength } from '@/app/_words/typed-number';
import { words } from '@/app/_words/words';
import { correctTrialReading } from '@/lib/access';
import { trialNumber } from '@/app/trials/_parts/trial-number';
import { trialAddress } from '@/app/trials/_parts/words';

const correction = z.object({
  place: z
    .string()
    .regex(/^\d{1,6} \d{1,3}$/)
    .transform((text) => text.split(' ').map(Number)),
  value: typedLength,
  reason: z.string().trim().min(1).max(200),
});

/** Puts another value in a place that was entered, with the reason. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = trialNumber((await params).id);
  return admit(request, async (viewer) => {
    if (id === null) return leadTo('/trials');
    const { fields, refused } = await fieldsOf(request, correction);
    if (refused !== null) return refused;
    const t = words('trials');
    const page = `${trialAddress(id)}/run`;
    const tell = (text: string) => leadTo(page, [saying(text, page)]);
    if (fields === null) return tell(t('run.needed', { unit: unit() }));
    const [run = 0, repeat = 0] = fields.place;
    try {
      await correctTrialReading(viewer, id, { run, repeat, value: fields.value, reason: fields.reason });
      return tell(t('run.corrected', { run: String(run), repeat }));
    } catch (error) {
      if (error instanceof RangeError) return tell(t('run.notCorrected', { fault: told(error.message) }));
      throw error;
    }
  });
}
