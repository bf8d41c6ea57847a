import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { whatIfAnswer } from '@/lib/access';
import { MEASURES } from '@/lib/assess/what-if';

/** Every scenario, each gauge out of service among them, by every measure, with intervals and the change against as now, as CSV. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const stored = await whatIfAnswer(viewer);
    if (stored?.answer == null) return sentence(404, words('whatIf')('notYet'));
    const rows = [...stored.answer.rows, ...stored.without.map(({ row }) => row)];
    return csvFile('what-if', {
      columns: [
        ...['scenario', 'measure', 'per_100_jobs', 'low_95', 'high_95'],
        ...['change', 'change_low_95', 'change_high_95'],
      ],
      rows: rows.flatMap(({ name, figures, change }) =>
        MEASURES.map((measure) => {
          const figure = figures[measure];
          const other = change?.[measure];
          return [
            ...[told(name), measure, figure.value, figure.low, figure.high],
            ...[other?.value ?? null, other?.low ?? null, other?.high ?? null],
          ];
        }),
      ),
    });
  });
