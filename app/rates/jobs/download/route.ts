import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit } from '@/app/_shop/admit';
import { firstOf } from '@/app/_words/address';
import { jobsBehind } from '@/app/rates/_parts/jobs-behind';
import { rateQuestion } from '@/app/rates/_parts/question';

/** The jobs behind a rate, as CSV. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const { question } = rateQuestion(query);
    const jobs = await jobsBehind(viewer, question, firstOf(query, 'group')?.slice(0, 100));
    return csvFile('jobs-behind-a-rate', {
      columns: [
        'job',
        'right',
        'technician',
        'sheet',
        'month',
        'gauges',
        'out_before',
        'impact_zone',
        'sections_out',
      ],
      rows: jobs.map(({ job, right, technician, sheet, month, gauges, start, sections }) => [
        ...[
          job,
          right,
          technician,
          sheet,
          month,
          gauges.join(' '),
          start.measured ? start.out : null,
          start.zone,
        ],
        sections.flatMap((one) => (one.right ? [] : [one.section])).join(' '),
      ]),
    });
  });
