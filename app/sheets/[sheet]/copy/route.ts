import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { sheetAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { copySheet, demand } from '@/lib/access';

interface Props {
  params: Promise<{ sheet: string }>;
}

const copy = z.object({ name: z.string().trim().max(200) });

/** Copies a sheet under another name, and leads to the copy. */
export async function POST(request: NextRequest, { params }: Props): Promise<Response> {
  const sheet = labelFrom((await params).sheet);
  return admit(request, async (viewer) => {
    demand(viewer, 'keep sheets');
    const { fields, refused } = await fieldsOf(request, copy);
    if (refused !== null) return refused;
    const t = words('sheets');
    const place = sheetAddress(sheet);
    const name = (fields?.name ?? '').normalize('NFC');
    try {
      await copySheet(viewer, sheet, name);
    } catch (error) {
      if (error instanceof RangeError)
        return leadTo(place, [saying(t('form.refused', { why: told(error.message) }), place)]);
      throw error;
    }
    return leadTo(sheetAddress(name), [saying(t('copy.done', { sheet }), sheetAddress(name))]);
  });
}
