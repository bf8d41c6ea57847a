import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { gaugeAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { numberFrom, typedNumber } from '@/app/_words/typed-number';
import { demand, LEAST_READINGS, verifyAgainst } from '@/lib/access';

const MOST_READINGS = 30;
const FARTHEST_MM = 100_000;

const length = typedNumber.refine((mm) => Math.abs(mm) <= FARTHEST_MM);
const form = z.object({
  kind: z.enum(['reference-length', 'check-standard']),
  reference: length,
  uncertainty: typedNumber.refine((mm) => mm >= 0 && mm <= 1000),
  readings: z.string().transform((text) => text.split(/[\s;]+/).filter((word) => word !== '')),
  note: z
    .string()
    .trim()
    .max(200)
    .transform((text) => (text === '' ? null : text)),
});

const OUTCOMES = {
  pass: 'It passed: the gauge is in service.',
  fail: 'It failed: the gauge is out of service until a verification passes.',
  undecided: 'It decides nothing, so the state stays as it was. Read again, more often.',
} as const;

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
    const tell = (text: string) => leadTo(place, [saying(text, place)]);
    if (fields === null)
      return tell('Nothing was recorded: a length, its uncertainty and readings are needed, all in mm.');
    const readings = fields.readings.map(numberFrom);
    const wrong = readings.findIndex((value) => value === null || Math.abs(value) > FARTHEST_MM);
    if (wrong >= 0)
      return tell(`Nothing was recorded: ‘${fields.readings[wrong] ?? ''}’ is no reading in mm.`);
    if (readings.length > MOST_READINGS)
      return tell(`Nothing was recorded: ${LEAST_READINGS} to ${MOST_READINGS} readings, please.`);
    try {
      const call = await verifyAgainst(viewer, tag, {
        ...fields,
        readings: readings.filter((value) => value !== null),
      });
      return tell(OUTCOMES[call]);
    } catch (error) {
      if (error instanceof RangeError) return tell(`Nothing was recorded. ${error.message}`);
      throw error;
    }
  });
}
