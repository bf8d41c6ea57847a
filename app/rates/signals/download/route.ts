import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { words } from '@/app/_words/words';
import { signalCharts } from '@/lib/access';
import { periodWords } from '@/app/rates/signals/_parts/period-words';

/** Every month of every series with its scores, as CSV. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const charts = await signalCharts(viewer);
    if (charts === null) return sentence(404, words('rates')('signals.notYet'));
    return csvFile('signals', {
      columns: [
        'series',
        'of',
        'name',
        'month',
        'counted',
        'score',
        'ewma',
        'cusum_up',
        'cusum_down',
        'beyond',
        'ewma_limit',
        'cusum_limit',
      ],
      rows: charts.flatMap(({ series, points, ewmaLimit, cusumLimit }) =>
        points.map(({ period, score, ewma, upper, lower, alarm }) => [
          ...[series.what, series.subject.kind, series.subject.name, period, periodWords(series, period)],
          ...[score, ewma, upper, lower, alarm, ewmaLimit, cusumLimit],
        ]),
      ),
    });
  });
