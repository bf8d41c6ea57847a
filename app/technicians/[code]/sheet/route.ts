import type { NextRequest } from 'next/server';
import { pdfAnswer } from '@/app/_record';
import { admit, sentence } from '@/app/_shop/admit';
import { labelFrom } from '@/app/_words/parameters';
import { words } from '@/app/_words/words';
import { talkSheetOf } from './_parts/gather';
import { talkDocument } from './_parts/talk-document';

interface Props {
  params: Promise<{ code: string }>;
}

/** One hand on paper, for a training talk: for the trainer, the manager and whose hand it is. The name of the file names nobody. */
export const GET = (request: NextRequest, { params }: Props): Promise<Response> =>
  admit(request, async (viewer) => {
    const sheet = await talkSheetOf(viewer, labelFrom((await params).code), Date.now());
    if (sheet === null) return sentence(404, words('talk')('nobody'));
    return pdfAnswer('training-talk', talkDocument(sheet));
  });
