import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { words } from '@/app/_words/words';
import { askedScenarios } from '@/app/what-if/_parts/asked-scenarios';
import { changeDrawing } from '@/app/what-if/_parts/change-drawing';
import { whatIfAnswer } from '@/lib/access';

/** What each scenario changes, one gauge (`without=`) out of service among them, as a picture. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const stored = await whatIfAnswer(viewer);
    if (stored?.answer == null) return sentence(404, words('whatIf')('notYet'));
    const { rows } = askedScenarios(stored, Object.fromEntries(request.nextUrl.searchParams));
    return pictureFile('what-if', words('whatIf')('change.picture'), changeDrawing(rows));
  });
