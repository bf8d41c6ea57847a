import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { ownRows, trialRows } from '@/app/trials/[id]/_parts/figure-rows';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { trialNumber } from '@/app/trials/_parts/trial-number';
import { analysisOf, getTrial, may, ownPartOf } from '@/lib/access';

/** The figures of a trial as CSV; of a technician the own ones, once it is closed. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = trialNumber((await params).id);
  return admit(request, async (viewer) => {
    const trial = id === null ? null : await getTrial(viewer, id);
    if (trial === null) return sentence(404, words('trials')('noSuch'));
    if (!may(viewer, 'run trials')) {
      const own = await ownPartOf(viewer, trial.id);
      return own === null
        ? sentence(409, words('trials')('notTold'))
        : csvFile(`trial-${trial.id}-own`, ownRows(own));
    }
    const { analysis, why } = analysisOf(viewer, trial);
    return analysis === null
      ? sentence(409, told(why))
      : csvFile(`trial-${trial.id}-figures`, trialRows(analysis));
  });
}
