import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { changeDrawing } from '@/app/what-if/_parts/change-drawing';
import { whatIfAnswer } from '@/lib/access';

/** What each scenario changes, as a picture. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const rows = (await whatIfAnswer(viewer))?.answer?.rows;
    if (rows === undefined) return sentence(404, 'This is not worked out yet. Try again in a minute.');
    return pictureFile('what-if', 'What if: change per 100 jobs against as now', changeDrawing(rows));
  });
