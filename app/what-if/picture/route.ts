import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { askedScenarios } from '@/app/what-if/_parts/asked-scenarios';
import { changeDrawing } from '@/app/what-if/_parts/change-drawing';
import { whatIfAnswer } from '@/lib/access';

/** What each scenario changes, one gauge (`without=`) out of service among them, as a picture. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const stored = await whatIfAnswer(viewer);
    if (stored?.answer == null) return sentence(404, 'This is not worked out yet. Try again in a minute.');
    const { rows } = askedScenarios(stored, Object.fromEntries(request.nextUrl.searchParams));
    return pictureFile('what-if', 'What if: change per 100 jobs against as now', changeDrawing(rows));
  });
