import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import { inOrder } from '@/app/_words/in-order';
import { currentFigures } from '@/lib/access';

/** The bias of every gauge with its interval, as CSV. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const fit = await currentFigures(viewer);
    if (fit === null) return sentence(404, words('technicians')('notYet'));
    return csvFile('gauges-bias', {
      columns: ['gauge', 'bias_mm', 'low_95', 'high_95', 'readings', 'why_none'],
      rows: [...fit.figures.gauges]
        .sort((a, b) => inOrder(a.gauge, b.gauge))
        .map(({ gauge, bias: { mean, low, high, why }, readings }) => [
          gauge,
          mean,
          low,
          high,
          readings,
          whyTold(why),
        ]),
    });
  });
