import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { gaugeAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { numberFrom, typedLength, typedMillimetres } from '@/app/_words/typed-number';
import { demand, LEAST_READINGS, verifyAgainst } from '@/lib/access';
import { unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

const MOST_READINGS = 30;
const FARTHEST_MM = 100_000;

const length = typedLength.refine((mm) => Math.abs(mm) <= FARTHEST_MM);
const form = z.object({
  kind: z.enum(['reference-length', 'check-standard']),
  reference: length,
  uncertainty: typedLength.refine((mm) => mm >= 0 && mm <= 1000),
  readings: z.string().transform((text) => text.split(/[\s;]+/).filter((word) => word !== '')),
  note: z
    .string()
    .trim()
    .max(200)
    .transform((text) => (text === '' ? null : text)),
});

function lengthFrom(text: string): number | null {
  const typed = numberFrom(text);
  return typed === null ? null : typedMillimetres(typed);
}

/** Keeps a verification against a length that is known. */
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
    if (fields === null) return tell(t('verify.incomplete', { unit: unit() }));
    const readings = fields.readings.map(lengthFrom);
    const wrong = readings.findIndex((value) => value === null || Math.abs(value) > FARTHEST_MM);
    if (wrong >= 0)
      return tell(t('verify.noReading', { written: fields.readings[wrong] ?? '', unit: unit() }));
    if (readings.length > MOST_READINGS)
      return tell(t('verify.tooMany', { least: LEAST_READINGS, most: MOST_READINGS }));
    try {
      const call = await verifyAgainst(viewer, tag, {
        ...fields,
        readings: readings.filter((value) => value !== null),
      });
      return tell(t(`verify.outcomes.${call}`));
    } catch (error) {
      if (error instanceof RangeError) return tell(t('verify.fault', { fault: told(error.message) }));
      throw error;
    }
  });
}
