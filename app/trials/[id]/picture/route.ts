import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { trialDrawing } from '@/app/trials/[id]/_parts/hanging-drawing';
import { ownDrawing } from '@/app/trials/[id]/_parts/own-drawing';
import { words } from '@/app/_words/words';
import { trialNumber } from '@/app/trials/_parts/trial-number';
import { unit } from '@/app/_words/numbers';
import { getTrial, may, ownPartOf } from '@/lib/access';

/** The hangings of a trial as a picture; of a technician the own ones, once it is closed. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = trialNumber((await params).id);
  return admit(request, async (viewer) => {
    const trial = id === null ? null : await getTrial(viewer, id);
    if (trial === null) return sentence(404, words('trials')('noSuch'));
    const title = words('trials')('trial.picture', { name: trial.name, unit: unit() });
    if (may(viewer, 'run trials'))
      return trial.readings === null
        ? sentence(409, words('trials')('ownFirst'))
        : pictureFile(`trial-${trial.id}`, title, trialDrawing(trial));
    const own = await ownPartOf(viewer, trial.id);
    return own === null
      ? sentence(409, words('trials')('notTold'))
      : pictureFile(`trial-${trial.id}-own`, title, ownDrawing(own, trial));
  });
}
