import type { NextRequest } from 'next/server';
import { admit, leadTo, sentence } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { formOf } from '@/app/sheets/_drafts/form';
import { judge } from '@/app/sheets/_drafts/judge';
import { keepDraft } from '@/app/sheets/_drafts/drafts';
import { address, sheetAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { correctSheet, demand, openSheet, refreshSoon } from '@/lib/access';

interface Props {
  params: Promise<{ sheet: string }>;
}

/** Checks a correction, or makes it and has figures and verdicts follow. */
export async function POST(request: NextRequest, { params }: Props): Promise<Response> {
  const name = labelFrom((await params).sheet);
  return admit(request, async (viewer) => {
    demand(viewer, 'keep sheets');
    const t = words('sheets');
    const form = await formOf(request);
    if (form instanceof Response) return form;
    const sheet = await openSheet(viewer, name);
    if (sheet === null) return sentence(404, t('form.gone'));
    const place = `${sheetAddress(name)}/correct`;
    const back = async (text: string | null) => {
      const { reason, revision, units, typed } = form;
      const id = await keepDraft(viewer, {
        of: name,
        revision,
        units,
        name,
        reason,
        typed,
        faults: [],
        origin: 'entered',
      });
      return leadTo(address(place, { draft: id }), text === null ? [] : [saying(text, place)]);
    };
    if (form.do === 'check') return back(null);
    const { content, faults, doubts } = judge(form, viewer.shop.defaultTolerance, sheet);
    if (faults.length > 0) return back(t('form.faulty', { count: faults.length }));
    if (doubts.length > 0 && !form.keepDoubts) return back(t('form.doubtful', { count: doubts.length }));
    try {
      const { revision, reason } = form;
      const done = await correctSheet(viewer, name, { revision, reason, ...content });
      refreshSoon(viewer);
      const { changes, jobs } = done;
      const text = t('form.corrected', { changes: changes.length, jobs });
      return leadTo(sheetAddress(name), [saying(text, sheetAddress(name))]);
    } catch (error) {
      if (error instanceof RangeError) return back(t('form.refused', { why: told(error.message) }));
      throw error;
    }
  });
}
