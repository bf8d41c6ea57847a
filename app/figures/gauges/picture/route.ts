import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { estimateDrawing } from '@/app/_figures/estimate-drawing';
import { gaugeEstimates } from '@/app/gauges/_parts/estimates';
import { admit, sentence } from '@/app/_shop/admit';
import { unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { currentFigures } from '@/lib/access';

/** The bias of every gauge as a picture. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const fit = await currentFigures(viewer);
    if (fit === null) return sentence(404, words('technicians')('notYet'));
    const rows = gaugeEstimates(fit.figures.gauges).map(({ key, value, low, high, why }) => ({
      name: key,
      value,
      low,
      high,
      why,
    }));
    const title = words('technicians')('gaugeBias', { unit: unit() });
    return pictureFile('gauges-bias', title, estimateDrawing(title, 'bias', rows));
  });
