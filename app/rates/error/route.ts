import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { words } from '@/app/_words/words';
import { riskAnswer } from '@/lib/access';

/** The jobs that are likeliest to be called wrongly, as CSV. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const risk = await riskAnswer(viewer);
    if (risk === null) return sentence(404, words('rates')('errorNotYet'));
    return csvFile('jobs-likeliest-called-wrongly', {
      columns: ['job', 'called_right', 'p_truly_right', 'worked_on_again'],
      rows: risk.jobs.map(({ job, calledRight, trulyRight, again }) => [job, calledRight, trulyRight, again]),
    });
  });
