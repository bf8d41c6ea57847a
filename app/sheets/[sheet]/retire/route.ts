import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { sheetAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { demand, retireSheet } from '@/lib/access';

interface Props {
  params: Promise<{ sheet: string }>;
}

const form = z.object({ retired: z.enum(['yes', 'no']).transform((word) => word === 'yes') });

/** Takes a sheet out of use for new rounds, or takes it back. */
export async function POST(request: NextRequest, { params }: Props): Promise<Response> {
  const sheet = labelFrom((await params).sheet);
  return admit(request, async (viewer) => {
    demand(viewer, 'keep sheets');
    const { fields, refused } = await fieldsOf(request, form);
    if (refused !== null) return refused;
    const t = words('sheets');
    const place = sheetAddress(sheet);
    const tell = (text: string) => leadTo(place, [saying(text, place)]);
    if (fields === null) return tell(t('retire.incomplete'));
    try {
      await retireSheet(viewer, sheet, fields.retired);
    } catch (error) {
      if (error instanceof RangeError) return tell(t('form.refused', { why: told(error.message) }));
      throw error;
    }
    return tell(t(fields.retired ? 'retire.done' : 'retire.back'));
  });
}
