import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { pdfAnswer } from '@/app/_record';
import { admit, sentence } from '@/app/_shop/admit';
import { words } from '@/app/_words/words';
import { letterMonths, letterOf } from './_parts/gather';
import { letterDocument } from './_parts/letter-document';

const month = z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/);

/** A month in a letter: the one asked for (`month=2026-03`), else the newest in which a job came to an answer. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const asked = month.safeParse(request.nextUrl.searchParams.get('month')).data;
    const chosen = asked ?? (await letterMonths(viewer))[0];
    const letter = chosen === undefined ? null : await letterOf(viewer, chosen, Date.now());
    if (letter === null) return sentence(404, words('letter')('none'));
    return pdfAnswer(`letter-${letter.month}`, letterDocument(letter));
  });
