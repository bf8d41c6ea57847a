import type { NextRequest } from 'next/server';
import { pdfAnswer } from '@/app/_record';
import { admit, sentence } from '@/app/_shop/admit';
import { labelFrom } from '@/app/_words/parameters';
import { words } from '@/app/_words/words';
import { recordOf } from './_parts/gather';
import { recordDocument } from './_parts/record-document';

interface Props {
  params: Promise<{ job: string }>;
}

/** The record of a job as a PDF, in the reader's language and units, as far as the reader may see the job. */
export const GET = (request: NextRequest, { params }: Props): Promise<Response> =>
  admit(request, async (viewer) => {
    const number = labelFrom((await params).job);
    const record = await recordOf(viewer, number, Date.now());
    if (record === null) return sentence(404, words('record')('none'));
    return pdfAnswer(`record-of-job-${record.row.job}`, recordDocument(record));
  });
