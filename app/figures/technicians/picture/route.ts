import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { sideBySideTitle, techniciansDrawing } from '@/app/technicians/_parts/technician-pictures';
import { words } from '@/app/_words/words';
import { everybodysFigures } from '@/lib/access';

const wanted = z.enum(['repeatability', 'setting', 'bias']);

/** One figure of every technician (`of=`) as a picture. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const fit = await everybodysFigures(viewer);
    const of = wanted.safeParse(request.nextUrl.searchParams.get('of'));
    if (fit === null || !of.success) return sentence(404, words('technicians')('noPicture'));
    return pictureFile(
      `technicians-${of.data}`,
      sideBySideTitle(of.data),
      techniciansDrawing(fit.figures, of.data),
    );
  });
