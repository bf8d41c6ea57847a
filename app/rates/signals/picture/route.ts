import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { words } from '@/app/_words/words';
import { chartDrawing } from '@/app/rates/signals/_parts/chart-drawing';
import { chartName, seriesKey } from '@/app/rates/signals/_parts/names';
import { signalCharts } from '@/lib/access';

/** The chart of one series (`series=`), as a picture. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const charts = await signalCharts(viewer);
    const wanted = request.nextUrl.searchParams.get('series');
    const chart = charts?.find(({ series }) => seriesKey(series.what, series.subject) === wanted);
    if (chart === undefined) return sentence(404, words('rates')('signals.noSeries'));
    return pictureFile(`signal-${wanted ?? ''}`, chartName(chart), chartDrawing(chart));
  });
