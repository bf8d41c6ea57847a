import type { NextRequest } from 'next/server';
import { admit, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { formOf } from '@/app/sheets/_drafts/form';
import { judge } from '@/app/sheets/_drafts/judge';
import { keepDraft } from '@/app/sheets/_drafts/drafts';
import { address, sheetAddress } from '@/app/_words/address';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { createSheet, demand } from '@/lib/access';

const PLACE = '/sheets/new/enter';

/** Checks a sheet that is being entered, or keeps it; what cannot be kept leads back to the form as it was filled. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'keep sheets');
    const t = words('sheets');
    const form = await formOf(request);
    if (form instanceof Response) return form;
    const back = async (text: string | null) => {
      const { name, reason, units, typed, origin } = form;
      const id = await keepDraft(viewer, {
        of: null,
        revision: 1,
        faults: [],
        name,
        reason,
        units,
        typed,
        origin,
      });
      return leadTo(address(PLACE, { draft: id }), text === null ? [] : [saying(text, PLACE)]);
    };
    if (form.do === 'check') return back(null);
    const { content, faults, doubts } = judge(form, viewer.shop.defaultTolerance, null);
    if (faults.length > 0) return back(t('form.faulty', { count: faults.length }));
    if (doubts.length > 0 && !form.keepDoubts) return back(t('form.doubtful', { count: doubts.length }));
    const name = form.name.trim();
    try {
      await createSheet(viewer, { name, ...content }, form.origin);
    } catch (error) {
      if (error instanceof RangeError) return back(t('form.refused', { why: told(error.message) }));
      throw error;
    }
    const place = sheetAddress(name.normalize('NFC'));
    return leadTo(place, [saying(t('form.kept'), place)]);
  });
}
